/** The bench chooses a pair by how it will idle in this amplifier, sees what that means, and looks at it the old way too. */
import { expect, test } from '@playwright/test'
import { seatOf } from './demo-people'

async function openJob(page: import('@playwright/test').Page) {
  await page.goto('/amps')
  await page
    .getByRole('link', { name: /Foreman 40/ })
    .first()
    .click()
  await page
    .getByRole('link', { name: /^1\d{3}-\d$/ })
    .first()
    .click()
  await page.getByRole('link', { name: /Tubes/ }).first().click()
}

test('a pair is compared by its predicted idle, says so with day, band and tolerance, and stands out in the picture', async ({
  browser,
}) => {
  const { page, context } = await seatOf(browser, 'tess')
  await openJob(page)
  await expect(page.getByText(/^Compared by the idle predicted in this amplifier, as read on/)).toBeVisible()
  await expect(page.getByText(/Weighed as: Push-pull, one adjustment for all\./)).toBeVisible()
  await expect(
    page.getByText(/^Readings are compared as .* which read most of them .* carried over to it\./),
  ).toBeVisible()
  const carried = page.getByRole('article').filter({ hasText: /Carried from .* to / })
  await expect(carried.first()).toContainText(/carried from .*\smA on .*, ±.*\smA/)
  const best = page.getByRole('article').first()
  await expect(best.getByRole('heading')).toContainText('Best by the weights')
  await expect(best).toContainText(/Predicted idle in this amplifier, not measured: .* known to ±.* \(95 %\)/)
  await expect(best).toContainText('A match is void without these.')

  const first = (await best.getByRole('row').nth(1).getByRole('link').textContent()) ?? ''
  const stop = page.getByRole('link', { name: new RegExp(`^${first}, `) })
  await stop.focus()
  await expect(stop).toBeFocused()
  await page.getByText('The points in figures').click()
  await expect(page.getByRole('row').filter({ hasText: first }).filter({ hasText: 'yes' })).toHaveCount(1)

  await page.getByRole('link', { name: 'How sets are weighed' }).click()
  await expect(page.getByRole('heading', { name: 'How sets are weighed' })).toBeVisible()
  await expect(page.getByRole('row').filter({ hasText: 'Plate current spread' })).toContainText('0.2')
  await context.close()
})

test('asked for the test point it says so, and what would help where no set is possible', async ({ browser }) => {
  const { page, context } = await seatOf(browser, 'tess')
  await openJob(page)
  await page.getByLabel('Compare at the test point').check()
  await page.getByRole('button', { name: 'Look again' }).click()
  await expect(page.getByText(/^Compared at the test point: You asked for the test point\./)).toBeVisible()
  await expect(page.getByRole('article').first()).toContainText(/Tested .* at plate \d+ V/)

  await page.getByLabel('Price of the set at most').fill('1')
  await page.getByRole('button', { name: 'Look again' }).click()
  await expect(page.getByText(/^Raise the price limit, .* The cheapest set costs/)).toBeVisible()
  await context.close()
})
