/** Who may do what: said on the page, and held when the page is got round. */
import { type BrowserContext, expect, type Page, test } from '@playwright/test'
import { demoShop } from '@/tests/support/e2e-shops'
import { fill, press } from './bench-hand'
import { seatOf, signInHere } from './demo-people'

test.describe.configure({ mode: 'serial' })

const TESTED = '/jobs/1019-9'
const SIGN_OFF = /Safety lines are signed by a technician/
const BENCH_WORK = /Readings and bench work are entered by a technician/
const KEEP_SHOP = /Settings and people are changed by whoever keeps the shop/

let technician: { page: Page; context: BrowserContext }
let counter: { page: Page; context: BrowserContext }

test.beforeAll(async ({ browser }) => {
  technician = await seatOf(browser, 'tess')
  counter = await seatOf(browser, 'milo')
})
test.afterAll(async () => {
  await technician.context.close()
  await counter.context.close()
})

test('without a sign-in every page leads to the sign-in, and no paper is given out', async ({ browser }) => {
  await technician.page.goto(TESTED)
  const paper = await technician.page.locator('a[href^="/papers/"]').first().getAttribute('href')
  const stranger = await browser.newContext({ baseURL: demoShop })
  const page = await stranger.newPage()
  for (const address of ['/', TESTED, `${TESTED}/safety`, '/stock', '/settings', '/outbox', '/find?q=a']) {
    await page.goto(address)
    await expect(page).toHaveURL(/\/sign-in/)
  }
  for (const address of [paper ?? '', '/jobs/1016-5/pickup/preview']) {
    const answer = await stranger.request.get(address, { maxRedirects: 0 })
    expect(answer.status()).toBe(307)
    expect(answer.headers().location).toMatch(/\/sign-in/)
    expect((await answer.body()).subarray(0, 5).toString()).not.toBe('%PDF-')
  }
  await stranger.close()
})

test('the counter is told on the page what a technician does, and is offered none of it', async () => {
  const { page } = counter
  const none = (name: RegExp) => expect(page.getByRole('button', { name })).toHaveCount(0)
  await page.goto(`${TESTED}/safety`)
  await expect(page.getByText(SIGN_OFF).first()).toBeVisible()
  await none(/^(Pass|Fail|Not tested|Release)/)
  for (const address of ['/bench', '/bench/new?phase=after']) {
    await page.goto(`${TESTED}${address}`)
    await expect(page.getByText(BENCH_WORK)).toBeVisible()
    await none(/^(Save and work out|Strike out)/)
    await expect(page.getByRole('link', { name: /^(Readings (before|after) the work|Correct these)/ })).toHaveCount(0)
  }
  await page.goto(`${TESTED}/work`)
  await expect(page.getByText(BENCH_WORK)).toBeVisible()
  await none(/^(Fitted|Take out again|Done|Used|Not after all)/)
  for (const address of ['/settings', '/settings/people/new', '/settings/operations/new']) {
    await page.goto(address)
    await expect(page.getByText(KEEP_SHOP)).toBeVisible()
    await none(/^(Save|Add)/)
  }
})

/** A technician's page, sent with the counter's sign-in: what somebody does who gets round the page. */
async function asCounter(address: string, send: (page: Page) => Promise<void>, refusal: RegExp): Promise<void> {
  const { page, context } = technician
  await page.goto(address)
  const own = await context.cookies()
  await context.clearCookies()
  await context.addCookies(await counter.context.cookies())
  await send(page)
  await expect(page.locator('[data-status="refused"]').first()).toContainText(refusal)
  await context.clearCookies()
  await context.addCookies(own)
}

test('a technician’s form sent with the counter’s sign-in is refused, and nothing is written', async () => {
  const { page } = technician
  const line = page.locator('li', { has: page.getByRole('heading', { name: /\. Insulation/ }) })
  await asCounter(
    `${TESTED}/safety`,
    async () => {
      await line.locator('summary', { hasText: 'Sign again' }).click()
      await line.locator('[name="value"]').fill('99')
      await line.locator('[name="instrumentId"]').selectOption({ index: 1 })
      await line.getByRole('button', { name: 'Pass' }).click()
    },
    SIGN_OFF,
  )
  await page.goto(`${TESTED}/safety`)
  await expect(line).toContainText('120 MΩ')
  await expect(line).not.toContainText('99 MΩ')

  await asCounter(
    `${TESTED}/bench/new?phase=after`,
    async () => {
      await fill(page, 'wallVolts', '118')
      await fill(page, 'warmupMinutes', '20')
      await fill(page, 'entries.0.plateVolts', '333')
      await press(page, 'Save and work out')
    },
    BENCH_WORK,
  )
  await page.goto(`${TESTED}/bench`)
  await expect(page.getByText('wall 118 V')).toHaveCount(0)

  await asCounter(
    '/settings',
    async () => {
      await fill(page, 'hourlyRate', '1')
      await press(page, 'Save settings')
    },
    KEEP_SHOP,
  )
  await page.goto('/settings')
  await expect(page.locator('[name="hourlyRate"]')).toHaveValue('90.00')
})

test('a form sent after signing out ends at the sign-in, and nothing is written', async ({ browser }) => {
  const { page, context } = await seatOf(browser, 'milo')
  await page.goto('/customers/new')
  await fill(page, 'name', 'Nobody Signed-In')
  await context.clearCookies()
  await press(page, 'Save customer')
  await expect(page).toHaveURL(/\/sign-in/)
  await context.close()
  await counter.page.goto('/customers?q=Nobody')
  await expect(counter.page.getByText('Nobody Signed-In')).toHaveCount(0)
})

test('a signed-out tablet that opens a job by its code is led there by the sign-in, and nowhere else', async ({
  browser,
}) => {
  const context = await browser.newContext({ baseURL: demoShop })
  const page = await context.newPage()
  await page.goto(`${TESTED}/safety`)
  await expect(page).toHaveURL(/\/sign-in/)
  await signInHere(page, 'milo', 'a wrong phrase')
  await expect(page.getByRole('alert').first()).toContainText('do not belong together')
  await signInHere(page, 'milo')
  await expect(page).toHaveURL(`${demoShop}${TESTED}/safety`)
  await page.getByRole('button', { name: 'Sign out' }).click()
  await page.goto('/sign-in?back=https%3A%2F%2Fexample.org%2F')
  await signInHere(page, 'milo')
  await expect(page).toHaveURL(`${demoShop}/`)
  await context.close()
})

test('after eight failed tries for a name the ninth is told to wait, right or wrong', async ({ browser }) => {
  const context = await browser.newContext({ baseURL: demoShop })
  const page = await context.newPage()
  await page.goto('/sign-in')
  const tries = async (phrase: string, told: RegExp) => {
    await fill(page, 'signInName', 'a-name-nobody-has')
    await fill(page, 'passPhrase', phrase)
    const answered = page.waitForResponse((response) => response.request().method() === 'POST')
    await press(page, 'Sign in')
    await answered
    await expect(page.locator('[data-status="refused"]')).toContainText(told)
    await expect(page.locator('[name="passPhrase"]')).toHaveValue('')
  }
  for (let count = 1; count <= 8; count++) await tries(`wrong phrase ${count}`, /do not belong together/)
  await tries('wrong phrase 9', /Too many failed tries\. Wait 15 minutes/)
  await expect(page.locator('[name="signInName"]')).toHaveValue('a-name-nobody-has')
  await context.close()
})
