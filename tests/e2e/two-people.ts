/**
 * Two people, two windows, one sheet. The first saves; the second, who opened it before, is told who saved
 * what, keeps every typed word, takes the first's values where nothing was typed, and saves again.
 */
import { type Browser, type BrowserContext, expect, type Locator, type Page, test } from '@playwright/test'
import { fill } from './bench-hand'
import { seatOf } from './demo-people'

/** Jobs of the demo shop: one with a draft, one in testing. */
const DRAFTED = '/jobs/1026-4'
const TESTED = '/jobs/1019-9'

export function twoPeople({ secondHasScript }: { readonly secondHasScript: boolean }): void {
  test.describe.configure({ mode: 'serial' })
  let contexts: BrowserContext[] = []
  let first: Page
  let second: Page
  /** Told apart when both projects run on one shop. */
  const way = secondHasScript ? 'with' : 'without'

  test.beforeAll(async ({ browser }: { browser: Browser }) => {
    const seats = [
      await seatOf(browser, 'anselm', { javaScriptEnabled: true }),
      await seatOf(browser, 'tess', { javaScriptEnabled: secondHasScript }),
    ] as const
    contexts = seats.map(({ context }) => context)
    ;[first, second] = [seats[0].page, seats[1].page]
  })
  test.afterAll(async () => {
    for (const context of contexts) await context.close()
  })

  const both = async (address: string) => {
    await first.goto(address)
    await second.goto(address)
  }
  const box = (name: string): Locator => second.locator(`[name="${name}"]`).first()
  const theirs = (name: string): Locator => second.locator('.field', { has: box(name) }).locator('.field-theirs')
  const told = (...words: readonly RegExp[]) =>
    Promise.all(
      words.map((word) => expect(second.locator('.form-message[data-status="refused"]').first()).toContainText(word)),
    )
  const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click()
  const unfold = (page: Page, name: string) => page.locator('summary', { hasText: name }).first().click()

  test('a customer: both changed the phone, one the address, the other the note', async () => {
    await first.goto('/customers')
    const customer = (await first.getByRole('link', { name: 'Keziah Bellwood' }).getAttribute('href')) ?? ''
    await both(customer)
    await fill(first, 'phone', `555-01 ${way}`)
    await fill(first, 'address', `3 Weir Lane ${way}`)
    await press(first, 'Save customer')
    await first.waitForURL(/seen=/)
    await fill(second, 'phone', `555-02 ${way}`)
    await fill(second, 'note', `rings twice ${way}`)
    await press(second, 'Save customer')
    await told(/Not saved yet\. Anselm Okwuosa saved this sheet/, /555-01/, /3 Weir Lane/)
    await expect(box('phone')).toHaveValue(`555-02 ${way}`)
    await expect(theirs('phone')).toHaveText(`Saved meanwhile: 555-01 ${way}`)
    await expect(box('address')).toHaveValue(`3 Weir Lane ${way}`)
    await expect(box('note')).toHaveValue(`rings twice ${way}`)
    await press(second, 'Save customer')
    await second.waitForURL(/seen=/)
    await second.goto(customer)
    await expect(box('phone')).toHaveValue(`555-02 ${way}`)
    await expect(box('address')).toHaveValue(`3 Weir Lane ${way}`)
    await expect(box('note')).toHaveValue(`rings twice ${way}`)
  })

  test('an amplifier’s sheet: one changes a type, the other a mark and adds a socket', async () => {
    await first.goto('/amps')
    const amp = await first
      .getByRole('row', { name: /F 42091/ })
      .getByRole('link')
      .first()
      .getAttribute('href')
    await both(`${amp}/sheet`)
    await fill(first, 'sockets.0.typeFitted', `12AY7 ${way}`)
    await press(first, 'Save the sheet')
    await first.waitForURL(/amps\/\w+(\?|$)/)
    await fill(second, 'sockets.1.markFitted', `blue dot ${way}`)
    const added = await second.locator('[name$=".position"]').count()
    await press(second, 'Add a socket')
    await expect(box(`sockets.${added}.position`)).not.toHaveValue('')
    await expect(box('sockets.1.markFitted')).toHaveValue(`blue dot ${way}`)
    await fill(second, `sockets.${added}.typeFitted`, '12AU7')
    await press(second, 'Save the sheet')
    await told(/Anselm Okwuosa saved this sheet/, /12AY7/)
    await expect(box('sockets.0.typeFitted')).toHaveValue(`12AY7 ${way}`)
    await expect(box('sockets.1.markFitted')).toHaveValue(`blue dot ${way}`)
    await expect(box(`sockets.${added}.typeFitted`)).toHaveValue('12AU7')
    await press(second, 'Save the sheet')
    await second.waitForURL(/amps\/\w+(\?|$)/)
    await second.goto(`${amp}/sheet`)
    await expect(box('sockets.0.typeFitted')).toHaveValue(`12AY7 ${way}`)
    await expect(box('sockets.1.markFitted')).toHaveValue(`blue dot ${way}`)
    await expect(box(`sockets.${added}.typeFitted`)).toHaveValue('12AU7')
  })

  test('readings: each corrects another socket, and no value changes its socket', async () => {
    await first.goto(`${DRAFTED}/bench`)
    const round = await first.getByRole('link', { name: 'Correct these readings' }).first().getAttribute('href')
    await both(round ?? '')
    const socketsOf = (page: Page) =>
      page.locator('[name$=".socketId"]').evaluateAll((all) => all.map((each) => (each as HTMLInputElement).value))
    const order = await socketsOf(second)
    const plate = await box('entries.1.plateVolts').inputValue()
    const [theirPlate, ownNote] = secondHasScript ? ['401', 'mains dips'] : ['402', 'mains dips at six']
    await fill(first, 'entries.0.plateVolts', theirPlate)
    await press(first, 'Save and work out')
    await first.waitForURL(/\/bench$/)
    await fill(second, 'note', ownNote)
    await fill(second, 'entries.2.plateVolts', '199,5')
    await press(second, 'Save and work out')
    await told(/Anselm Okwuosa saved this sheet/, new RegExp(`${theirPlate} V`))
    expect(await socketsOf(second)).toEqual(order)
    await expect(box('entries.0.plateVolts')).toHaveValue(theirPlate)
    await expect(box('entries.1.plateVolts')).toHaveValue(plate)
    await expect(box('entries.2.plateVolts')).toHaveValue('199,5')
    await expect(box('note')).toHaveValue(ownNote)
    await press(second, 'Save and work out')
    await second.waitForURL(/\/bench$/)
    await second.goto(round ?? '')
    expect(await socketsOf(second)).toEqual(order)
    await expect(box('entries.0.plateVolts')).toHaveValue(theirPlate)
    await expect(box('entries.1.plateVolts')).toHaveValue(plate)
    await expect(box('entries.2.plateVolts')).toHaveValue('199.5')
  })

  test('a job’s entries: one rewrites the fault, the other adds an item', async () => {
    await both(DRAFTED)
    await unfold(first, 'Correct these entries')
    await fill(first, 'fault', `Crackles, ${way}.`)
    await press(first, 'Save entries')
    await first.waitForURL(/seen=/)
    await unfold(second, 'Correct these entries')
    const items = await second.locator('[name^="items."][name$=".label"]').count()
    await press(second, 'Add an item')
    await fill(second, `items.${items}.label`, `strap ${way}`)
    await press(second, 'Save entries')
    await told(/Anselm Okwuosa saved this sheet/, new RegExp(`Crackles, ${way}`))
    await expect(box('fault')).toHaveValue(`Crackles, ${way}.`)
    await expect(box(`items.${items}.label`)).toHaveValue(`strap ${way}`)
    await press(second, 'Save entries')
    await second.waitForURL(/seen=/)
    await expect(second.getByText(`“Crackles, ${way}.”`)).toBeVisible()
    await expect(second.getByText(`1 × strap ${way}`).first()).toBeVisible()
  })

  test('a quote’s draft: one changes a price, the other the note and a part', async () => {
    await both(`${DRAFTED}/quote`)
    const price = secondHasScript ? '91.00' : '92.00'
    await fill(first, 'labour.0.unitPrice', price)
    await press(first, 'Work out and keep the draft')
    await expect(first.getByText('The draft is kept.')).toBeVisible()
    const part = await second.locator('[name^="parts."][name$=".text"]').count()
    await press(second, 'Add a part')
    await fill(second, `parts.${part}.text`, `knob ${way}`)
    await fill(second, `parts.${part}.unitPrice`, '3,20')
    await fill(second, 'note', `for ${way}`)
    await press(second, 'Work out and keep the draft')
    await told(/Anselm Okwuosa saved this sheet/)
    await expect(box('labour.0.unitPrice')).toHaveValue(price)
    await expect(box(`parts.${part}.text`)).toHaveValue(`knob ${way}`)
    await expect(box(`parts.${part}.unitPrice`)).toHaveValue('3,20')
    await expect(box('note')).toHaveValue(`for ${way}`)
    await press(second, 'Work out and keep the draft')
    await expect(second.getByText('The draft is kept.')).toBeVisible()
    await second.goto(`${DRAFTED}/quote`)
    await expect(box('labour.0.unitPrice')).toHaveValue(price)
    await expect(box(`parts.${part}.text`)).toHaveValue(`knob ${way}`)
    await expect(box('note')).toHaveValue(`for ${way}`)
  })

  test('a safety line: the second signature is not put over the first unseen', async () => {
    const heading = secondHasScript ? 'Listening' : 'Soak'
    const line = (page: Page) =>
      page.locator('li', { has: page.getByRole('heading', { name: new RegExp(`\\d+\\. ${heading}`) }) })
    await both(`${TESTED}/safety`)
    await line(first).locator('[name="reason"]').fill('at pickup')
    await line(first).getByRole('button', { name: 'Not tested' }).click()
    await expect(line(first).locator('.tag').first()).toHaveText('not tested')
    await line(second).locator('[name="reason"]').fill('hums')
    await line(second).getByRole('button', { name: 'Fail' }).click()
    await told(/Not signed\. Anselm Okwuosa/)
    await expect(line(second)).toContainText('at pickup')
    await expect(line(second).locator('[name="reason"]')).toHaveValue('hums')
    await line(second).getByRole('button', { name: 'Fail' }).click()
    await expect(line(second).locator('.tag').first()).toHaveText('fails')
    await expect(line(second)).toContainText('Tess Varnholt')
  })
}
