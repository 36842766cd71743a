/**
 * One odd bottle: the print says glass, the bottle is a metal can. Told step by step it turns out to be the metal
 * version, and is taken into stock with what was seen; with JavaScript and without.
 */
import { expect, type Page, test } from '@playwright/test'
import { seatOf } from './demo-people'

test.describe.configure({ timeout: 60_000 })

const choose = (page: Page, name: string, value: string) =>
  page.locator(`input[name="${name}"][value="${value}"]`).check()

async function isNamedContradictory(page: Page): Promise<void> {
  await expect(page.getByRole('heading', { name: /Label and construction/ })).toContainText('contradictory')
  await expect(page.getByText(/The print says 6V6GT: GT is glass.*But seen, bulb: metal can/)).toBeVisible()
  await expect(page.locator('h3').first()).toContainText('6V6')
}

async function takenIntoStock(page: Page, name: string): Promise<void> {
  await page.getByRole('link', { name: `Take this into stock as ${name}`, exact: true }).click()
  await expect(page.getByRole('heading', { name: /Take in one/ })).toBeVisible()
  await expect(page.locator('[name="designation"]')).toHaveValue(name)
  await expect(page.locator('[name="labelText"]')).toHaveValue('6V6GT')
  await expect(page.locator('[name="codes"]')).toHaveValue('188-5-32')
  await expect(page.locator('[name="bulbShape"]')).toHaveValue('Metal can')
  await expect(page.locator('[name="bulbShape"]')).toBeVisible()
}

test('an odd bottle, told as one looks at it: the answer follows each word, and the stock form is filled', async ({
  browser,
}) => {
  const { page, context } = await seatOf(browser, 'tess')
  await page.goto('/stock')
  await page.getByRole('link', { name: 'What is it?' }).click()
  await expect(page.getByRole('heading', { name: /Look at this next: print/ })).toBeVisible()
  await page.getByLabel('Type as printed or etched').fill('6V6GT')
  await expect(page.locator('h3').first()).toContainText('6V6GT')
  await page.getByLabel('Date code', { exact: true }).fill('188-5-32')
  await expect(page.getByText(/week 32 of 1945, 1955, 1965/).first()).toBeVisible()
  await choose(page, 'bulb', 'metal')
  await isNamedContradictory(page)
  await expect(page).toHaveURL(/print=6V6GT/)
  // The answer came, and what was typed stands as it was.
  await expect(page.getByLabel('Type as printed or etched')).toHaveValue('6V6GT')
  await page.getByRole('link', { name: 'None to be seen' }).click()
  await expect(page.locator('input[name="getterPlace"][value="unseen"]')).toBeChecked()
  await page.getByRole('link', { name: 'Clear Getter place' }).click()
  await expect(page.locator('input[name="getterPlace"][value=""]')).toBeChecked()
  await expect(page.locator('input[name="bulb"][value="metal"]')).toBeChecked()
  await takenIntoStock(page, '6V6')
  await context.close()
})

test('the same without JavaScript: one form, one button, the same answer', async ({ browser }) => {
  const { page, context } = await seatOf(browser, 'milo', { javaScriptEnabled: false })
  await page.goto('/stock/identify')
  await page.getByLabel('Type as printed or etched').fill('6V6GT')
  await page.getByLabel('Date code', { exact: true }).fill('188-5-32')
  await choose(page, 'bulb', 'metal')
  await page.getByRole('button', { name: 'What can it be?' }).click()
  await isNamedContradictory(page)
  await expect(page.locator('input[name="bulb"][value="metal"]')).toBeChecked()
  await page.getByRole('link', { name: 'Cannot be told' }).first().click()
  await expect(page.getByText('bulb metal can', { exact: false }).first()).toBeVisible()
  await takenIntoStock(page, '6V6')
  await page.goto('/stock/identify?bulb=metal')
  await page.getByRole('link', { name: 'Start anew' }).click()
  await expect(page.locator('input[name="bulb"][value=""]')).toBeChecked()
  await context.close()
})

test('on a telephone without JavaScript: what leads and what to look at next stay in sight, groups fold', async ({
  browser,
}) => {
  const viewport = { width: 390, height: 800 }
  const { page, context } = await seatOf(browser, 'milo', { javaScriptEnabled: false, viewport })
  await page.goto('/stock/identify?print=6V6GT&bulb=metal')
  const bar = page.getByRole('complementary', { name: 'How it stands' })
  const inSight = (name: RegExp) => expect(bar.getByRole('link', { name })).toBeInViewport({ ratio: 1 })
  await inSight(/^6V6 \d+ %, \d+ less likely$/)
  await expect(bar).toContainText('2 things told')
  const next = page.locator('#ask-getterPlace')
  await expect(next).not.toBeInViewport()
  await bar.getByRole('link', { name: 'Next: getter place' }).click()
  await expect(next.getByText('None to be seen')).toBeInViewport({ ratio: 1 })

  const micas = page.locator('details', { has: page.locator('#ask-micas') })
  await expect(micas.getByText('Four or more')).toBeHidden()
  await micas.locator('summary').click()
  await choose(page, 'micas', 'more')
  await bar.getByRole('button', { name: 'Look' }).click()
  await expect(bar).toContainText('3 things told')
  await expect(micas.locator('summary')).toHaveText('Micas four or more, or with springs')
  await expect(page.locator('details', { has: page.locator('#ask-bulb') }).locator('summary')).toContainText(
    'metal can',
  )
  await page.mouse.wheel(0, 2500)
  await inSight(/^6V6 \d+ %/)
  await context.close()
})

test('on a desk every group is open and no bar lies on the rows', async ({ browser }) => {
  const { page, context } = await seatOf(browser, 'tess', { viewport: { width: 1440, height: 900 } })
  await page.goto('/stock/identify?print=6V6GT')
  const groups = page.locator('fieldset[id^="ask-"]')
  expect(await groups.count()).toBe(17)
  for (const group of await groups.all()) await expect(group).toBeVisible()
  const form = await page.locator('form#told').boundingBox()
  const bar = await page.getByRole('complementary', { name: 'How it stands' }).boundingBox()
  expect(bar?.x ?? 0).toBeGreaterThan((form?.x ?? 0) + (form?.width ?? 0))
  await context.close()
})
