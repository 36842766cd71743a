/** The stock is shared out over the open jobs, one job takes what it was given, and the drawer is paired up. */
import { type BrowserContextOptions, expect, type Page, test } from '@playwright/test'
import { seatOf } from './demo-people'

const served = (page: Page) => page.getByRole('heading', { name: /get their sets\.|gets its (sets|tubes)\./ })

/** Without script the page reloads by itself every three seconds; here it is asked sooner. */
async function waitForResult(page: Page, heading: RegExp): Promise<void> {
  await expect(async () => {
    await page.reload()
    await expect(page.getByRole('heading', { name: heading })).toBeVisible({ timeout: 500 })
  }).toPass({ timeout: 60_000 })
}

test('sharing out runs beside the other pages; a job accepts its set, finds it on its quote, and it is not given twice', async ({
  browser,
}) => {
  const { page, context } = await seatOf(browser, 'tess')
  await page.goto('/')
  await page.getByRole('link', { name: 'Share out the stock' }).click()
  await page.getByLabel('Difference in plate current').fill('0')
  await page.getByRole('button', { name: 'Share out' }).click()
  await expect(page.getByText('0 mA is too low. It must be between 0.1 and 50 mA.').first()).toBeVisible()
  await page.getByLabel('Difference in plate current').fill('5')
  await page.getByRole('button', { name: 'Share out' }).click()
  await page.waitForURL(/\/share-out\/[0-9a-f-]{36}$/)

  const beside = await context.newPage()
  await beside.goto('/customers')
  await expect(beside.getByRole('heading', { name: 'Customers', exact: true })).toBeVisible()
  await beside.close()

  await expect(served(page)).toBeVisible({ timeout: 60_000 })
  await expect(page.getByText(/\(proved\)/).first()).toBeVisible()
  await expect(page.getByText(/^First come, first served/)).toBeVisible()

  const job = page
    .getByRole('region')
    .filter({ has: page.getByRole('button', { name: 'Accept for this job' }) })
    .last()
  const number = ((await job.getByRole('link').first().textContent()) ?? '').trim()
  const marks = await job.getByRole('cell').getByRole('link').allTextContents()
  expect(marks.length).toBeGreaterThan(0)
  await job.getByRole('button', { name: 'Accept for this job' }).click()
  const taken = page.getByRole('region').filter({ has: page.getByRole('link', { name: number, exact: true }) })
  await expect(taken.getByText('On the draft quote.')).toBeVisible()
  await taken.getByRole('link', { name: 'To the quote' }).click()
  await page.waitForURL(/\/jobs\/[^/]+\/quote$/)
  for (const mark of marks) await expect(page.getByText(`mark ${mark}`).first()).toBeVisible()

  await page.goto('/share-out')
  await expect(page.getByLabel(new RegExp(`^${number} `))).not.toBeChecked()
  await context.close()
})

test('without script too: pairs are made up, listed with their spread, and what is left is told', async ({
  browser,
}) => {
  const options: BrowserContextOptions = { javaScriptEnabled: false }
  const { page, context } = await seatOf(browser, 'anselm', options)
  await page.goto('/stock')
  await page.getByRole('link', { name: 'Sets', exact: true }).click()
  const row = page.getByRole('row').filter({ hasText: 'EL84' }).first()
  await row.getByRole('button', { name: /^Pair up: EL84/ }).click()
  await waitForResult(page, /pairs? from \d+ EL84 tubes/)
  await expect(page.getByText('No other way of making them spreads less')).toBeVisible()
  await expect(page.getByRole('row').filter({ hasText: 'mA apart' }).first()).toBeVisible()
  await page.goto('/stock/sets/not-there')
  await expect(page.getByText('no longer at hand')).toBeVisible()
  await context.close()
})
