/**
 * Every kind of form, refused with JavaScript off: the server answers with the sentence beside the box, keeps
 * what was typed, and never gives a pass phrase back. A form whose answer the server could not draw would hang it.
 */
import { type BrowserContext, expect, type Locator, type Page, test } from '@playwright/test'
import { demoShop } from '@/tests/support/e2e-shops'
import { fill, pick, press } from './bench-hand'
import { seatOf } from './demo-people'

test.describe.configure({ timeout: 60_000 })

let context: BrowserContext
let page: Page

test.beforeAll(async ({ browser }) => {
  ;({ context, page } = await seatOf(browser, 'tess', { javaScriptEnabled: false }))
})
test.afterAll(() => context.close())

const box = (name: string): Locator => page.locator(`[name="${name}"]`)
const first = async (from: string, fitting: string) => {
  await page.goto(from)
  return (await page.locator(`main a[href^="${fitting}"]`).first().getAttribute('href')) ?? ''
}

type Refusal = {
  readonly form: string
  readonly at: string | (() => Promise<string>)
  /** By name of the box. */
  readonly typed?: Readonly<Record<string, string>>
  readonly chosen?: Readonly<Record<string, string>>
  readonly unfold?: string
  readonly pressed: string | RegExp
  /** Sentence beside a box, or at the head of the form. */
  readonly told: RegExp
}

const REFUSALS: readonly Refusal[] = [
  {
    form: 'customer',
    at: '/customers/new',
    typed: { phone: '☎ 555', email: 'at home', address: 'Line one\nLine two' },
    pressed: 'Save customer',
    told: /Name is empty/,
  },
  {
    form: 'tube',
    at: '/stock/new',
    typed: { designation: '6L6GC', price: '-1', location: 'B2' },
    pressed: 'Take into stock',
    told: /Price: -1\.00 USD is too low/,
  },
  {
    form: 'delivery',
    at: '/stock/receive',
    typed: { designation: '6L6GC', untested: '2,5' },
    pressed: 'Take all into stock',
    told: /2\.5 must be a whole number/,
  },
  {
    form: 'tube type',
    at: '/types/new?like=6V6GT',
    typed: { designation: 'QH-1', plateWatts: '12 W', 'rows.0.plateVolts': '300' },
    pressed: 'Save the type',
    told: /Plate dissipation, limit: “12 W” is not a number/,
  },
  {
    form: 'tube type whose number is taken',
    at: '/types/new?like=EL34',
    typed: { designation: 'CV1741' },
    pressed: 'Save the type',
    told: /is known already/,
  },
  {
    form: 'tube test',
    at: () => first('/stock', '/stock/cm'),
    typed: { plateMilliamps: '12,5,7', testNote: 'warm' },
    pressed: 'Write the test down',
    told: /“12,5,7” is not a number/,
  },
  {
    form: 'tube sheet',
    at: () => first('/stock', '/stock/cm'),
    typed: { price: 'NaN', construction: 'black plates' },
    pressed: 'Save corrections',
    told: /“NaN” is not an amount/,
  },
  {
    form: 'tube leaves',
    at: () => first('/stock', '/stock/cm'),
    typed: { reason: '' },
    pressed: 'Take out of stock',
    told: /Where to: nothing is chosen/,
  },
  {
    form: 'shop settings',
    at: '/settings',
    typed: { taxMilliPercent: '1e999', name: 'Quillhaven Amplifier Service ✓' },
    pressed: 'Save settings',
    told: /“1e999”/,
  },
  {
    form: 'new person',
    at: '/settings/people/new',
    typed: { name: 'Ove', signInName: 'ove', passPhrase: 'short', passPhraseAgain: 'short' },
    pressed: 'Add to the shop',
    told: /too short/,
  },
  {
    form: 'own pass phrase',
    at: '/settings/pass-phrase',
    typed: { present: 'not this one', next: 'a long enough phrase', nextAgain: 'a long enough phrase' },
    pressed: 'Change pass phrase',
    told: /present pass phrase does not fit/,
  },
  {
    form: 'instrument',
    at: '/settings/instruments/new',
    typed: { name: 'Meter <script>', accuracyPercent: '-0,5' },
    pressed: 'Save instrument',
    told: /-0\.5 % is too low/,
  },
  {
    form: 'operation',
    at: '/settings/operations/new',
    typed: { name: 'Look at it', milliHours: '0' },
    pressed: 'Save operation',
    told: /Hours: 0 is outside 0\.001 to 200/,
  },
  { form: 'move of a job', at: '/jobs/1028-0', pressed: 'Move the job', told: /Choose where the job stands now/ },
  {
    form: 'entries of a job',
    at: '/jobs/1028-0',
    typed: { fault: '', spendingLimit: '12.345,678' },
    unfold: 'Correct these entries',
    pressed: 'Save entries',
    told: /“12\.345,678” has more than 2 decimals/,
  },
  {
    form: 'return unrepaired',
    at: '/jobs/1018-1/pickup',
    typed: { reason: '', charge: '1 000 000 000 000', owesNote: 'later' },
    unfold: 'Give it back unrepaired',
    pressed: 'Give back unrepaired',
    told: /1000000000000\.00 USD is too high/,
  },
  {
    form: 'answer to a quote',
    at: '/jobs/1023-1/quote',
    typed: { by: 'Rui', at: '25:99', on: '2019-02-31' },
    pressed: /accepted$/,
    told: /“2019-02-31” is not a day/,
  },
]

for (const { form, at, typed = {}, chosen = {}, unfold, pressed, told } of REFUSALS) {
  test(`${form}: refused, told and kept`, async () => {
    await page.goto(typeof at === 'string' ? at : await at())
    if (unfold) await page.locator('summary', { hasText: unfold }).click()
    // A date box of the browser takes no impossible day; the text is sent as somebody else’s browser would.
    for (const [name, value] of Object.entries(typed)) {
      const isDate = (await box(name).first().getAttribute('type')) === 'date'
      if (isDate)
        await box(name)
          .first()
          .evaluate((each) => each.setAttribute('type', 'text'))
      await box(name).first().fill(value)
    }
    for (const [name, value] of Object.entries(chosen)) await pick(page, name, value)
    await page.getByRole('button', { name: pressed }).click()
    const sentences = page.locator('.field-fault:visible, .form-message[data-status="refused"]:visible')
    await expect(sentences.first()).toBeVisible()
    expect((await sentences.allTextContents()).join('\n')).toMatch(told)
    for (const [name, value] of Object.entries(typed)) {
      const secret = (await box(name).first().getAttribute('type')) === 'password'
      const isDate = (await box(name).first().getAttribute('type')) === 'date'
      if (!isDate) await expect(box(name).first()).toHaveValue(secret ? '' : value)
    }
    expect(await page.content()).not.toContain('Application error')
  })
}

test('a set cannot be put on a quote that is out of the shop’s hands: there is no button, and why', async () => {
  for (const [job, why] of [
    ['1022-3', /Q2020/],
    ['1011-6', /its papers are handed over/],
  ] as const) {
    await page.goto(`/jobs/${job}/tubes`)
    await expect(page.getByText(/The sets below are what could be chosen now/)).toHaveText(why)
    await expect(page.getByRole('heading', { name: /Best by the weights/ }).first()).toBeVisible()
    await expect(page.getByRole('button', { name: /on the quote|^Quote / })).toHaveCount(0)
  }
})

test('a set that can no longer be had, and a sheet of another model, are refused at their buttons', async () => {
  await page.goto('/jobs/1026-4/tubes')
  await box('set')
    .first()
    .evaluate((each) => each.setAttribute('value', 'gone'))
  await press(page, 'Put this set on the quote').catch(() =>
    page.getByRole('button', { name: 'Put this set on the quote' }).first().click(),
  )
  await expect(page.getByText(/This set can no longer be had as shown/)).toBeVisible()

  const other = await first('/amps?q=Tansy', '/amps/cm')
  await page.goto('/amps/new?q=Hollis')
  await page.getByRole('link', { name: /Hollis/ }).click()
  await fill(page, 'make', 'Corvane')
  await fill(page, 'model', 'Pipit 5')
  await press(page, 'Save amplifier')
  await page.waitForURL(/seen=/)
  await page.getByRole('link', { name: /sheet/i }).first().click()
  await box('fromAmpId')
    .first()
    .evaluate((each, id) => each.setAttribute('value', id), other.split('/').at(-1) ?? '')
  await page
    .getByRole('button', { name: /copy its sheet/ })
    .first()
    .click()
  await expect(page.getByText(/is not the same make and model/)).toBeVisible()
})

test('a wrong sign-in is told, its name kept and its phrase not', async ({ browser }) => {
  const stranger = await browser.newPage({ baseURL: demoShop, javaScriptEnabled: false })
  await stranger.goto('/sign-in')
  await stranger.getByLabel('Sign-in name').fill('milo')
  await stranger.getByLabel('Pass phrase').fill('paper tape')
  await stranger.getByRole('button', { name: 'Sign in' }).click()
  await expect(stranger.getByRole('alert')).toContainText('do not belong together')
  await expect(stranger.getByLabel('Sign-in name')).toHaveValue('milo')
  await expect(stranger.getByLabel('Pass phrase')).toHaveValue('')
  await stranger.close()
})

test('the server is well after all of it', async () => {
  const started = Date.now()
  expect((await page.request.get('/api/health')).status()).toBe(200)
  expect(Date.now() - started).toBeLessThan(2_000)
})
