/** What people really type, paste and press: shown as it was typed, refused with the bound, or taken once. */
import { type BrowserContext, expect, type Locator, type Page, test } from '@playwright/test'
import { fill, paperText, pick, press } from './bench-hand'
import { seatOf } from './demo-people'

test.describe.configure({ mode: 'serial' })

const LONG_WORD = 'Wolframfadenröhre'.repeat(7).slice(0, 118)
const MARKUP = '<img src=x onerror="alert(1)"><script>alert(2)</script> & "quotes"'
const EMOJI = '🎸🔥 crackles ½ × 6,3 V~ Ω µ — “ok” عربى 日本'

let context: BrowserContext
let page: Page
let job = ''
const alarms: string[] = []

test.beforeAll(async ({ browser }) => {
  ;({ context, page } = await seatOf(browser, 'tess', { viewport: { width: 390, height: 844 } }))
  page.on('dialog', async (dialog) => {
    if (dialog.type() === 'alert') alarms.push(dialog.message())
    await dialog.accept()
  })
  page.on('pageerror', (error) => alarms.push(error.message))
})
test.afterAll(() => context.close())

const box = (name: string): Locator => page.locator(`[name="${name}"]`)
const faultOf = (name: string): Locator => page.locator('.field', { has: box(name) }).locator('.field-fault')
const fitsTheWindow = async () =>
  expect(await page.evaluate(() => document.documentElement.scrollWidth), page.url()).toBeLessThanOrEqual(390)

test('long words, markup and signs of every kind are kept and shown as they were typed, on screen and paper', async () => {
  await page.goto('/jobs/new?customer=new')
  await fill(page, 'customer.name', LONG_WORD)
  await fill(page, 'customer.note', MARKUP)
  await fill(page, 'customer.phone', '5'.repeat(60))
  await fill(page, 'amp.make', 'x'.repeat(500))
  await fill(page, 'amp.model', MARKUP.slice(0, 60))
  await fill(page, 'fault', `${EMOJI}\n${MARKUP}\n${'endless '.repeat(40)}`)
  await fill(page, 'promisedOn', '2019-02-28')
  await press(page, 'Take it in')
  await expect(faultOf('amp.make')).toContainText(/has 500 characters; at most \d+ fit/)
  await fill(page, 'amp.make', 'Unbrokenmakename'.repeat(3))
  await press(page, 'Take it in')
  await expect(faultOf('promisedOn')).toContainText(/lies in the past/)
  await expect(box('customer.name')).toHaveValue(LONG_WORD)
  await expect(box('fault')).toHaveValue(/🎸🔥 crackles/)
  await fill(page, 'promisedOn', '')
  await press(page, 'Take it in')
  await page.waitForURL(/\?taken=in/)
  job = /jobs\/(\d+-\d)/.exec(page.url())?.[1] ?? ''
  await expect(page.getByText(EMOJI).first()).toBeVisible()
  await expect(page.getByText('<script>alert(2)</script>').first()).toBeVisible()
  const receipt = await page.getByRole('link', { name: 'Print the receipt' }).getAttribute('href')
  const text = (await paperText(page, receipt ?? '')).replace(/\s+/g, '')
  expect(text).toContain('<script>alert(2)</script>')
  expect(text).toContain(LONG_WORD)
  for (const address of [
    `/jobs/${job}`,
    `/jobs/${job}/quote`,
    `/jobs/${job}/pickup`,
    '/',
    '/customers',
    '/amps',
    '/find?q=alert',
  ]) {
    await page.goto(address)
    await fitsTheWindow()
  }
  expect(alarms).toEqual([])
})

test('numbers: comma and point are both read, everything else is told with its bounds', async () => {
  await page.goto('/jobs/1026-4/bench/new?phase=before')
  const plate = 'entries.0.plateVolts'
  for (const [typed, told] of [
    ['-5', /-5 V is below 0\. Swap the probes/],
    ['NaN', /“NaN” is not a number\. Type a number between 0 and 1200 V/],
    ['1e999', /“1e999” is not a number/],
    ['Infinity', /“Infinity” is not a number/],
    ['0x1F', /“0x1F” is not a number/],
    ['1.234,5', /1234\.5 V is too high/],
    ['4,5,2', /“4,5,2” is not a number/],
    ['4 5 2 V', /is not a number/],
  ] as const) {
    await fill(page, plate, typed)
    await box(plate).blur()
    await expect(faultOf(plate)).toContainText(told)
  }
  for (const typed of ['0', ' 452,0 ', '+451.5', '']) {
    await fill(page, plate, typed)
    await box(plate).blur()
    await expect(faultOf(plate)).toHaveCount(0)
  }
  await fill(page, 'wallVolts', '0')
  await fill(page, 'warmupMinutes', '20')
  await press(page, 'Save and work out')
  await expect(faultOf('wallVolts')).toContainText('0 V is too low. It must be between 60 and 280 V')
  await fill(page, 'wallVolts', '118')
  await press(page, 'Save and work out')
  await expect(page.locator('.form-message[data-status="refused"]')).toContainText('No reading is filled in')
})

test('a quote without lines, or with a last day in the past, does not go out', async () => {
  await page.goto(`/jobs/${job}/quote`)
  await press(page, 'Write a quote')
  await press(page, 'Print and hand over')
  const message = page.locator('.form-message[data-status="refused"]')
  await expect(message).toBeVisible()
  await expect(message).toContainText(/has no lines yet/)
  await press(page, 'Add a part')
  await fill(page, 'parts.0.text', MARKUP)
  await fill(page, 'parts.0.unitPrice', '-3')
  await press(page, 'Print and hand over')
  await expect(faultOf('parts.0.unitPrice')).toContainText('-3.00 USD is too low')
  await fill(page, 'parts.0.unitPrice', '1.234,5')
  await fill(page, 'validUntil', '2020-01-01')
  await press(page, 'Print and hand over')
  await expect(message).toContainText(/past|over/)
  await expect(box('parts.0.unitPrice')).toHaveValue('1.234,5')
  expect(alarms).toEqual([])
})

async function countOf(name: string): Promise<number> {
  await page.goto(`/customers?q=${encodeURIComponent(name)}`)
  return page.getByRole('link', { name, exact: true }).count()
}

test('a button pressed twice writes one sheet, and behind the back button lies a new one', async () => {
  await page.goto('/customers/new')
  await fill(page, 'name', 'Twice Pressed')
  await page.getByRole('button', { name: 'Save customer' }).dblclick()
  await page.waitForURL(/seen=/)
  expect(await countOf('Twice Pressed')).toBe(1)

  await page.goto('/customers/new')
  await fill(page, 'name', 'Sent Again')
  await press(page, 'Save customer')
  await page.waitForURL(/seen=/)
  await page.goBack()
  await expect(box('name')).toHaveValue('')
  expect(await countOf('Sent Again')).toBe(1)
})

test('a payment pressed twice is taken once', async () => {
  await page.goto('/jobs/1016-5/pickup')
  await fill(page, 'amount', '10')
  await pick(page, 'how', 'cash')
  await page.getByRole('button', { name: 'Take payment' }).dblclick()
  await expect(page.getByRole('row', { name: /Payment, cash/ })).toHaveCount(1)
  await page.reload()
  await expect(page.getByRole('row', { name: /Payment, cash/ })).toHaveCount(1)
})
