/** A form that reaches the server twice, as a double press without JavaScript sends it: the second gets the answer of the first. */
import { type APIResponse, type BrowserContext, expect, type Page, test } from '@playwright/test'
import { fill, pick, press } from './bench-hand'
import { seatOf } from './demo-people'

let context: BrowserContext
let page: Page

test.beforeAll(async ({ browser }) => {
  ;({ context, page } = await seatOf(browser, 'anselm', { javaScriptEnabled: false }))
})
test.afterAll(() => context.close())

const customers = async (name: string) => {
  await page.goto(`/customers?q=${encodeURIComponent(name)}`)
  return page.getByRole('link', { name, exact: true }).count()
}

/** Sends the form of this button as it stands, as often as said, without waiting in between. */
async function sendAtOnce(button: string, times: number): Promise<APIResponse[]> {
  const fields = await page
    .locator('form', { has: page.getByRole('button', { name: button }) })
    .evaluate((form) => [...new FormData(form as HTMLFormElement)].map(([name, value]) => [name, String(value)]))
  const multipart = () => {
    const data = new FormData()
    for (const [name, value] of fields) data.append(name ?? '', value ?? '')
    return data
  }
  return Promise.all(Array.from({ length: times }, () => context.request.post(page.url(), { multipart: multipart() })))
}

test('a job sent three times is taken in once, with one customer and one amplifier', async () => {
  await page.goto('/jobs/new?customer=new')
  await fill(page, 'customer.name', 'Pressed Twice')
  await fill(page, 'amp.make', 'Tolvane')
  await fill(page, 'amp.model', 'Double 2')
  await fill(page, 'fault', 'dead')
  const answers = await sendAtOnce('Take it in', 2)
  // And once more, as a browser does that is told to load the answer again.
  answers.push(...(await sendAtOnce('Take it in', 1)))
  const addresses = new Set(answers.map((answer) => new URL(answer.url()).pathname))
  expect(addresses.size).toBe(1)
  expect([...addresses][0]).toMatch(/^\/jobs\/\d+-\d$/)
  expect(await customers('Pressed Twice')).toBe(1)
  await page.getByRole('link', { name: 'Pressed Twice' }).click()
  await expect(page.locator('main a[href^="/jobs/1"]')).toHaveCount(1)
})

test('with one box changed it is another sheet, and is written', async () => {
  await page.goto('/customers/new')
  await fill(page, 'name', 'First Of Two')
  await sendAtOnce('Save customer', 1)
  await fill(page, 'name', 'Second Of Two')
  await sendAtOnce('Save customer', 1)
  expect(await customers('First Of Two')).toBe(1)
  expect(await customers('Second Of Two')).toBe(1)
})

test('readings and a payment sent twice are written once', async () => {
  const rounds = page.getByRole('heading', { name: /^(Before|After) the work$/, includeHidden: true })
  await page.goto('/jobs/1025-6/bench')
  const before = await rounds.count()
  await page.goto('/jobs/1025-6/bench/new?phase=before')
  await fill(page, 'wallVolts', '119')
  await fill(page, 'warmupMinutes', '15')
  await fill(page, 'entries.0.plateVolts', '300')
  await sendAtOnce('Save and work out', 2)
  await page.goto('/jobs/1025-6/bench')
  expect(await rounds.count()).toBe(before + 1)

  await page.goto('/jobs/1017-3/pickup')
  await fill(page, 'amount', '7')
  await pick(page, 'how', 'cash')
  await sendAtOnce('Take payment', 2)
  await page.goto('/jobs/1017-3/pickup')
  await expect(page.getByRole('row', { name: /^Payment.*cash/ })).toHaveCount(1)
})

test('the page behind the back button is a new sheet', async () => {
  await page.goto('/customers/new')
  await fill(page, 'name', 'Went Back')
  await press(page, 'Save customer')
  await page.waitForURL(/seen=/)
  await page.goBack()
  await expect(page.locator('[name="name"]')).toHaveValue('')
  expect(await customers('Went Back')).toBe(1)
})
