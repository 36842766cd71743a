/** The technician asks what may go into an amplifier, and is told why one look-alike must not. */
import { expect, test } from '@playwright/test'
import { seatOf } from './demo-people'

test('a 7591 looks like a 6L6GC and is refused pin by pin; an EL34 is told what it needs', async ({ browser }) => {
  const { page, context } = await seatOf(browser, 'tess')
  await page.goto('/amps')
  await page
    .getByRole('link', { name: /Foreman 40/ })
    .first()
    .click()
  await page.getByRole('link', { name: 'What else may go into its sockets' }).click()
  await expect(page.getByRole('heading', { name: /What may go into .*Foreman 40/ })).toBeVisible()

  const row = (type: string) =>
    page.getByRole('row').filter({ has: page.getByRole('rowheader', { name: type, exact: true }) })
  await expect(row('6L6GC')).toContainText('goes in')
  await expect(row('EL34')).toContainText('goes in only with changes')
  await expect(row('EL34')).toContainText('link it to the cathode (pin 8)')

  await page.getByLabel('Tube type').fill('7591')
  await page.getByRole('button', { name: 'Look' }).click()
  await expect(row('7591')).toContainText('does not go in')
  await expect(row('7591')).toContainText('Pin 6: the socket is wired for nothing, the tube has control grid there.')

  await page.getByLabel('Tube type').fill('6XYZ9')
  await page.getByRole('button', { name: 'Look' }).click()
  await expect(page.getByText('6XYZ9 is not known here')).toBeVisible()
  await context.close()
})

test('a tube from the drawer is asked where on the shelf it could go', async ({ browser }) => {
  const { page, context } = await seatOf(browser, 'tess')
  await page.goto('/stock?q=6L6GC')
  await page.getByRole('link', { name: /^T-/ }).first().click()
  await page.getByRole('link', { name: 'Where it could go' }).click()
  const uses = page.getByRole('row')
  await expect(uses.filter({ hasText: 'Foreman 40' }).first()).toContainText('goes in')
  await expect(uses.filter({ hasText: 'does not go in' }).first()).toContainText('Against it')
  await context.close()
})

test('supply and bias are written down, faults beside their boxes, and told in the history', async ({ browser }) => {
  const { page, context } = await seatOf(browser, 'tess')
  await page.goto('/amps')
  await page
    .getByRole('link', { name: /Tansy 18/ })
    .first()
    .click()
  await page.getByRole('link', { name: 'Write down supply and bias' }).click()
  await page.getByLabel('Reservoir').fill('9000')
  await page.getByLabel('Grid supply, coldest').fill('-20')
  await page.getByLabel('Grid supply, hottest').fill('-40')
  await page.getByRole('button', { name: 'Save supply and bias' }).click()
  await expect(
    page.getByText('Reservoir: 9000 µF is too high. It must be between 0.1 and 5000 µF.', { exact: true }),
  ).toBeVisible()
  await page.getByLabel('Reservoir').fill('47')
  await page.getByRole('button', { name: 'Save supply and bias' }).click()
  await expect(page.getByText(/^Grid supply, coldest: -20 V is less negative than the hottest/)).toBeVisible()
  await page.getByLabel('Grid supply, coldest').fill('-40')
  await page.getByLabel('Grid supply, hottest').fill('-20')
  await page.getByRole('button', { name: 'Save supply and bias' }).click()
  await expect(page.getByRole('region', { name: 'Supply and bias' })).toContainText('47 µF')
  await expect(page.getByText('Supply and bias saved').first()).toBeVisible()
  await context.close()
})
