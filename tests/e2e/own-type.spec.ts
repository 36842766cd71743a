/** A tube type the handbook does not know: written down from a like one, used in stock, corrected, withdrawn. */
import { expect, type Page, test } from '@playwright/test'
import { fill, pick, press } from './bench-hand'
import { seatOf } from './demo-people'

/** No such tube is made. */
const NAME = '6V6-QHX'

async function takeIntoStock(page: Page): Promise<void> {
  await page.goto('/stock/new')
  await fill(page, 'designation', NAME)
  await pick(page, 'condition', 'current-production')
  await fill(page, 'price', '31')
  await press(page, 'Take into stock')
  await page.waitForURL(/\/stock\/c/)
}

test('a type is written down from a like one, rates a tube in stock, is corrected and withdrawn', async ({
  browser,
}) => {
  const { page, context } = await seatOf(browser, 'tess')
  await takeIntoStock(page)
  const tube = page.url()
  await page.getByRole('link', { name: 'written down' }).click()
  await expect(page.getByRole('textbox', { name: 'Designation', exact: true })).toHaveValue(NAME)

  await page.getByLabel('Start from a known type').fill('CV511')
  await press(page, 'Fill the boxes from it')
  await expect(page.getByText(/CV511 is another number of 6V6GT/)).toBeVisible()
  await expect(page.locator('[name="plateWatts"]')).toHaveValue('12')
  await fill(page, 'otherNumbers', '6V6GT')
  await fill(page, 'plateWatts', '13')
  await fill(page, 'rows.0.plateVolts', '300')
  await fill(page, 'rows.0.screenVolts', '250')
  await fill(page, 'rows.0.gridVolts', '-13')
  await fill(page, 'rows.0.plateMilliamps', '47')
  await fill(page, 'sourceText', 'leaflet in its box')
  await expect(page.getByText('Operating point 1 dissipates 14.1 W at the plate')).toBeVisible()
  await press(page, 'Save the type')
  await expect(
    page.getByText('Other numbers: 6V6GT').or(page.getByText('6V6GT is known already')).first(),
  ).toBeVisible()
  await fill(page, 'otherNumbers', '')
  await press(page, 'Save the type')

  await page.waitForURL(/\/types\/c/)
  const card = page.url()
  await expect(page.getByRole('heading', { level: 1 })).toContainText(`${NAME} the shop’s own`)
  await expect(page.getByRole('row', { name: /^Plate dissipation 13 W/ })).toBeVisible()
  await expect(page.getByText('written down by this shop from: leaflet in its box')).toBeVisible()
  await expect(page.getByRole('row', { name: /^300 V, screen 250 V, grid −13 V 47 47/ })).toBeVisible()

  await page.goto(tube)
  await expect(page.getByText('13 W on the plate')).toBeVisible()
  await page.getByRole('link', { name: `Figures, pins and curves of the ${NAME}` }).click()
  await page.getByRole('link', { name: 'Correct it' }).click()
  await fill(page, 'plateWatts', '12.5')
  await press(page, 'Save corrections')
  await expect(page.getByText('Plate dissipation: 13 W → 12.5 W')).toBeAttached()

  await page.goto(card)
  await page.locator('summary', { hasText: 'Withdraw it' }).click()
  await press(page, 'Withdraw')
  await expect(page.getByText(/This type is withdrawn/)).toBeVisible()
  await page.goto(tube)
  await expect(page.getByText('The last letters of 6V6-QHX are a maker’s or dealer’s own.')).toBeVisible()
  await page.goto(card)
  await press(page, 'Take into use again')
  await expect(page.getByText(/This type is withdrawn/)).toBeHidden()
  await context.close()
})

test('the counter reads a card, and is told who writes one', async ({ browser }) => {
  const { page, context } = await seatOf(browser, 'milo')
  await page.goto('/types?q=vt-107a')
  await expect(page.getByText('VT-107A is another number of 6V6GT.')).toBeVisible()
  await page.getByRole('link', { name: 'Open its card' }).click()
  await expect(page.getByRole('img', { name: '6V6, average plate characteristics' })).toBeVisible()
  await expect(page.getByRole('link', { name: /Write down/ })).toHaveCount(0)
  await page.goto('/types/new')
  await expect(page.getByText('Types are written down by a technician')).toBeVisible()
  await context.close()
})
