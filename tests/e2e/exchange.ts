/** One tube of a quote that is out is exchanged for another, seen on the work order, and exchanged back. */
import { type Browser, type BrowserContextOptions, expect, type Page, test } from '@playwright/test'
import { paperText, press } from './bench-hand'
import { seatOf } from './demo-people'

const quotedMark = async (page: Page, position: string): Promise<string> => {
  const item = page
    .getByRole('listitem')
    .filter({ hasText: new RegExp(`^${position} `) })
    .first()
  return (/mark (\S+)/.exec((await item.textContent()) ?? '') ?? [])[1] ?? ''
}

/** A job of the demo shop that waits for parts: its pair of EL84 is reserved. */
async function openReserved(page: Page): Promise<string> {
  await page.goto('/')
  const row = page.getByRole('row').filter({ hasText: 'Motorboats on loud chords.' })
  await row.getByRole('link').first().click()
  await page.waitForURL(/\/jobs\/1\d{3}-\d$/)
  return new URL(page.url()).pathname
}

export function walkExchange(options: BrowserContextOptions): void {
  test('a reserved tube is exchanged with what the set would be in view, the papers tell both, and it comes back', async ({
    browser,
  }: {
    browser: Browser
  }) => {
    const { page, context } = await seatOf(browser, 'tess', options)
    const job = await openReserved(page)
    await page.goto(`${job}/tubes`)
    const mark = await quotedMark(page, 'V4')
    expect(mark).not.toBe('')

    await page.goto(`${job}/work`)
    await page.getByRole('link', { name: new RegExp(`^Exchange this tube ?: ${mark}`) }).click()
    await expect(page.getByRole('heading', { name: 'Exchange in V4' })).toBeVisible()
    await expect(page.getByRole('row').filter({ hasText: /apart/ }).first()).toContainText('Against the set as it is')

    // A tube of another kind is typed: why it may not go in, and no button.
    await page.getByLabel('Mark of the tube').fill('T-0147')
    await press(page, 'Look')
    await expect(page.getByText(/Type 6L6; the sockets want EL84\./)).toBeVisible()
    await expect(page.getByRole('button', { name: /^Exchange / })).toHaveCount(0)

    const look = page.getByRole('link', { name: /^Look at / }).first()
    const other = ((await look.textContent()) ?? '').replace('Look at ', '').trim()
    await look.focus()
    await page.keyboard.press('Enter')
    await expect(page.getByRole('heading', { name: `${other} in place of ${mark}` })).toBeVisible()
    const sets = page.getByRole('region', { name: `${other} in place of ${mark}` })
    await expect(sets).toContainText(/idles at .* as predicted|mA.* at plate/)
    await expect(sets.getByRole('definition')).toHaveCount(2)
    await expect(sets).toContainText(/was quoted for V4/)
    await sets.getByRole('button', { name: `Exchange ${mark} for ${other} in V4` }).focus()
    await page.keyboard.press('Enter')
    await page.waitForURL(/\/work\?exchanged=V4/)
    await expect(page.getByRole('status')).toContainText(`V4 is to have ${other} in place of ${mark}.`)
    await expect(page.getByText(new RegExp(`V4: quoted EL84, mark ${mark}; to fit EL84, mark ${other}`))).toBeVisible()

    await press(page, 'Print work order')
    await page.waitForURL(/\/papers\//)
    const text = await paperText(page, page.url())
    expect(text.replace(/\s+/g, ' ')).toContain(`V4: quoted EL84, mark ${mark}; to fit EL84, mark ${other}`)

    await page.goto(job)
    await expect(page.getByText(new RegExp(`${mark} exchanged for ${other} in V4; quoted was`)).first()).toBeVisible()
    await page.goto(`${job}/work?exchanged=V4&was=${mark}`)
    await page.getByRole('link', { name: `Exchange back for ${mark}` }).click()
    await expect(page.getByText(/It is the one that was quoted/)).toBeVisible()
    await press(page, `Exchange ${other} for ${mark} in V4`)
    await page.waitForURL(/\/work\?exchanged=V4/)
    await expect(page.getByText(/quoted EL84/)).toHaveCount(0)
    await expect(page.getByRole('row').filter({ hasText: mark }).first()).toBeVisible()
    await context.close()
  })
}
