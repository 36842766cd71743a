/** Twenty tubes of a carton go through the tester by keyboard alone: mark, current, transconductance, each with Enter. */
import { expect, test } from '@playwright/test'
import { seatOf } from './demo-people'

/** As read, one after the other; the last but one is weak. */
const CURRENTS = [
  45, 44.2, 46.1, 43.8, 45.5, 44.9, 45.2, 46.4, 43.9, 44.4, 45.8, 44.1, 45.1, 46, 44.6, 43.7, 45.4, 44.8,
]
const READ = [...CURRENTS.map((milliamps) => [String(milliamps), '4,1']), ['27,5', '3,0'], ['45,3', '4,1']]

test('receive twenty with the test sheet, by keyboard', async ({ browser }) => {
  const { page, context } = await seatOf(browser, 'tess')
  await page.goto('/stock/test-sheet')
  await page.getByLabel('Type', { exact: true }).fill('6V6GT')
  await page.getByLabel('Plate volts').fill('250')
  await page.getByLabel('Screen volts').fill('250')
  await page.getByLabel('Grid volts').fill('-12,5')
  await page.getByLabel('Price of new ones').fill('28')
  await page.getByRole('button', { name: 'Start the sheet' }).click()

  const run = page.getByRole('region', { name: 'The run so far' })
  await expect(run).toContainText('The first reading starts the run')
  await page.getByLabel('take it in without asking').check()
  await page.getByLabel('Mark', { exact: true }).focus()

  for (const [place, figures] of READ.entries()) {
    for (const typed of [`V-${101 + place}`, ...figures]) {
      await page.keyboard.type(typed)
      await page.keyboard.press('Enter')
    }
    await expect(run.getByRole('heading')).toHaveText(`The run so far: ${place + 1} ${place === 0 ? 'tube' : 'tubes'}`)
    await expect(page.getByLabel('Mark', { exact: true })).toBeFocused()
    if (place === 18) {
      await expect(run.getByRole('alert')).toContainText('V-119: plate current 27.5 mA lies far from this run')
      await expect(run.getByRole('alert')).toContainText("61 % of the handbook's 45 mA")
    }
  }
  await expect(run).toContainText('19 lie within 5 mA and 10 % of one another')

  await page.getByRole('row', { name: /V-119/ }).getByRole('link', { name: 'Correct V-119' }).click()
  await expect(page.getByRole('heading', { name: 'Put right: V-119' })).toBeVisible()
  await page.getByLabel('Plate current').fill('44,5')
  await page.getByLabel('Transconductance').fill('4,1')
  await page.getByRole('button', { name: 'Put the line right' }).click()
  await expect(run).toContainText('20 lie within 5 mA and 10 % of one another')

  await page.goto('/stock?q=V-119')
  await expect(page.getByRole('row', { name: /V-119/ })).toContainText('44.5 mA')
  await context.close()
})

test('a short stops that tube, and a mark nobody knows is asked about', async ({ browser }) => {
  const { page, context } = await seatOf(browser, 'anselm')
  await page.goto('/stock/test-sheet')
  await page
    .getByRole('link', { name: /6V6GT at 250/ })
    .first()
    .click()
  const mark = page.getByLabel('Mark', { exact: true })
  await mark.focus()
  for (const typed of ['V-140', 's']) {
    await page.keyboard.type(typed)
    await page.keyboard.press('Enter')
  }
  const asked = 'Mark V-140 is not in the stock. Correct it; or press Enter once more'
  await expect(page.getByRole('alert').filter({ hasText: asked }).first()).toBeVisible()
  await expect(mark).toBeFocused()
  await page.keyboard.press('Enter')
  await expect(page.getByRole('row', { name: /V-140/ })).toContainText('short, test stopped')
  await context.close()
})
