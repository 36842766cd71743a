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
