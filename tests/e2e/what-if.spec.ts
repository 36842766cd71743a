/**
 * "What if" on the bench of a job that is done: other grid volts are answered while one types, the answer
 * stands in the address, and without JavaScript the same boxes give the same figures.
 */
import { expect, type Locator, type Page, test } from '@playwright/test'
import { seatOf } from './demo-people'

test.describe.configure({ mode: 'serial' })

const BENCH = '/jobs/1014-0/bench'

const panel = (page: Page): Locator => page.locator('#what-if')
const box = (page: Page, name: string): Locator => panel(page).locator(`[name="${name}"]`)
const faultOf = (page: Page, name: string): Locator =>
  panel(page)
    .locator('.field', { has: page.locator(`[name="${name}"]`) })
    .locator('.field-fault')

/** Plate currents in mA, socket by socket: those now, or those then. */
async function currents(page: Page, state: 'now' | 'then'): Promise<number[]> {
  const rows = panel(page).getByRole('row', { name: new RegExp(`\\b${state}\\b.*mA`) })
  const texts = await rows.allInnerTexts()
  return texts.map((text) => Number(/([\d.]+) mA/.exec(text)?.[1]))
}

let answered: number[] = []

test('−52 V on the grids is answered as one types: colder, and told so', async ({ browser }) => {
  const { page, context } = await seatOf(browser, 'tess', { viewport: { width: 1440, height: 900 } })
  await page.goto(BENCH)
  await expect(panel(page).getByText('computed, not measured').first()).toBeVisible()
  const now = await currents(page, 'now')
  expect(now).toHaveLength(2)
  await box(page, 'grid').pressSequentially('-52')
  await expect(panel(page).getByText('Then: with the grid supply at −52 V')).toBeVisible()
  answered = await currents(page, 'then')
  expect(answered).toHaveLength(2)
  for (const [at, current] of answered.entries()) expect(current).toBeLessThan((now[at] ?? 0) - 5)
  await expect(
    panel(page)
      .getByText(/too cold for the window/)
      .first(),
  ).toBeVisible()
  await expect(page).toHaveURL(/grid=-52/)

  await box(page, 'wall').fill('12o')
  await expect(faultOf(page, 'wall')).toContainText('“12o” is not a number')
  await box(page, 'wall').fill('')
  await expect(faultOf(page, 'wall')).toHaveCount(0)
  await page.reload()
  await expect(box(page, 'grid')).toHaveValue('-52')
  expect(await currents(page, 'then')).toEqual(answered)

  await panel(page).getByRole('link', { name: 'Back to how it is' }).click()
  await expect(panel(page).getByText('Nothing is changed yet')).toBeVisible()
  await expect(box(page, 'grid')).toHaveValue('')
  await context.close()
})

test('without JavaScript a press answers the same, a stocked tube too, and keeps what was typed', async ({
  browser,
}) => {
  const { page, context } = await seatOf(browser, 'tess', { javaScriptEnabled: false })
  await page.goto(BENCH)
  await box(page, 'grid').fill('-52')
  await panel(page).getByRole('button', { name: 'Work it out' }).click()
  await expect(panel(page).getByText('Then: with the grid supply at −52 V')).toBeVisible()
  expect(await currents(page, 'then')).toEqual(answered)

  await box(page, 'grid').fill('52')
  await box(page, 'pulled').selectOption('V6')
  await panel(page).getByRole('button', { name: 'Work it out' }).click()
  await expect(faultOf(page, 'grid')).toContainText('52 V is above chassis')
  await expect(box(page, 'grid')).toHaveValue('52')
  await expect(box(page, 'pulled')).toHaveValue('V6')

  await page.goto(`${BENCH}?mark.V5=T-0999`)
  await expect(faultOf(page, 'mark.V5')).toContainText('no tube marked T-0999')
  await page.goto(`${BENCH}?mark.V5=t+0036`)
  await expect(panel(page).getByText('T-0036 in V5')).toBeVisible()

  await page.getByText(/^Effects:/).click()
  await expect(page.getByRole('row', { name: /Line 10 % above the mark/ })).toContainText(/Too hot|Uncertain|Within/)
  await page.getByText(/^Side checks/).click()
  await expect(page.getByRole('row', { name: /Heater winding, current/ })).toContainText('4.5 A')
  await context.close()
})
