/**
 * The whole path in the demo shop with JavaScript off: every button is a plain form, every refusal is drawn by
 * the server, and nothing typed is lost on the way.
 */
import { type BrowserContext, expect, type Locator, type Page, test } from '@playwright/test'
import { squeezed } from '@/tests/support/pdf-text'
import { fill, paperText, pick, press, step } from './bench-hand'
import { seatOf } from './demo-people'

test.describe.configure({ mode: 'serial' })

let context: BrowserContext
let page: Page
let job = ''
let amp = ''
/** Row of each output socket, in the sheet's form. */
let outputs: number[] = []

test.beforeAll(async ({ browser }) => {
  ;({ context, page } = await seatOf(browser, 'tess', { javaScriptEnabled: false }))
})
test.afterAll(() => context.close())

const box = (name: string): Locator => page.locator(`[name="${name}"]`)
const faultOf = (name: string): Locator => page.locator('.field', { has: box(name) }).locator('.field-fault')
const refused = (): Locator => page.locator('.form-message[data-status="refused"]').first()
const tag = (word: string): Locator => page.locator('.tag', { hasText: word }).first()
const signLine = (heading: string): Locator =>
  page.locator('li', { has: page.getByRole('heading', { name: new RegExp(`\\d+\\. ${heading}`) }) })

test('an amplifier that was sold comes in with its new owner; one that is here already is refused', async () => {
  await page.goto('/jobs/new')
  await fill(page, 'who', 'D 10554')
  await press(page, 'Look up')
  await page.getByRole('link', { name: 'It has a new owner' }).click()
  await fill(page, 'customer.name', 'Ottilie Brandvold')
  await fill(page, 'customer.phone', '555-0177')
  await fill(page, 'fault', 'Bought at the fair, dead.')
  await press(page, 'Take it in')
  await expect(refused()).toContainText(/already in the shop on job 1019-9/)
  await expect(box('customer.name')).toHaveValue('Ottilie Brandvold')
  await expect(box('fault')).toHaveValue('Bought at the fair, dead.')

  await page.goto('/jobs/new?who=P5-01834')
  await page.getByRole('link', { name: 'It has a new owner' }).click()
  await fill(page, 'customer.name', 'Ottilie Brandvold')
  await fill(page, 'fault', 'Bought at the fair, dead.')
  await press(page, 'Take it in')
  await page.waitForURL(/\?taken=in/)
  await page.getByRole('link', { name: /Corvane Pipit 5, serial P5-01834/ }).click()
  await expect(page.getByRole('link', { name: 'Ottilie Brandvold' }).first()).toBeVisible()
  await expect(page.getByText('Changed hands')).toBeVisible()
})

test('intake: rows come and go, faults stand beside their boxes, the receipt says it all', async () => {
  await page.goto('/jobs/new')
  await fill(page, 'who', 'nobody of that name')
  await press(page, 'Look up')
  await expect(page.getByText(/Nobody and nothing found/)).toBeVisible()
  await fill(page, 'who', 'Wendeline Aas')
  await press(page, 'New customer, new amplifier')
  await expect(box('customer.name')).toHaveValue('Wendeline Aas')
  await press(page, 'Add an item')
  await press(page, 'Add an item')
  await fill(page, 'items.0.label', 'lid')
  await fill(page, 'items.1.label', 'footswitch')
  await fill(page, 'items.1.count', '0')
  await page.getByRole('button', { name: 'Take out' }).first().click()
  await expect(box('items.0.label')).toHaveValue('footswitch')
  await expect(box('items.1.label')).toHaveCount(0)
  await fill(page, 'customer.email', 'wendeline.example.net')
  await fill(page, 'amp.make', 'Brindlecote')
  await fill(page, 'amp.model', 'Foreman 40')
  await fill(page, 'amp.serial', 'F 49999')
  await fill(page, 'amp.mainsVolts', '1e999')
  await pick(page, 'amp.protectionClass', 'I')
  await fill(page, 'amp.fuse', 'T 3 A 250 V')
  await fill(page, 'fault', 'One side goes quiet <b>after</b> a while. “Über alles” – 100 % sure.')
  await fill(page, 'spendingLimit', '1.234,5x')
  await fill(page, 'promisedOn', '2031-02-28')
  await press(page, 'Take it in')
  await expect(refused()).toContainText(/4 fields need another look/)
  await expect(faultOf('customer.email')).toContainText('“wendeline.example.net” is not an e-mail address')
  await expect(faultOf('amp.mainsVolts')).toContainText('between 90 and 260 V')
  await expect(faultOf('items.0.count')).toContainText('between 1 and 99')
  await expect(faultOf('spendingLimit')).toContainText('“1.234,5x” is not an amount')
  for (const [name, typed] of [
    ['customer.email', 'wendeline.example.net'],
    ['amp.mainsVolts', '1e999'],
    ['amp.protectionClass', 'I'],
    ['items.0.count', '0'],
    ['spendingLimit', '1.234,5x'],
    ['promisedOn', '2031-02-28'],
    ['fault', 'One side goes quiet <b>after</b> a while. “Über alles” – 100 % sure.'],
  ] as const)
    await expect(box(name)).toHaveValue(typed)
  await fill(page, 'customer.email', 'wendeline@example.net')
  await fill(page, 'amp.mainsVolts', '117')
  await fill(page, 'items.0.count', '1')
  await fill(page, 'spendingLimit', '600')
  await press(page, 'Take it in')
  await page.waitForURL(/jobs\/\d+-\d\?taken=in/)
  job = /jobs\/(\d+-\d)/.exec(page.url())?.[1] ?? ''
  amp = (await page.getByRole('link', { name: /Foreman 40, serial F 49999/ }).getAttribute('href')) ?? ''
  const receipt = await page.getByRole('link', { name: 'Print the receipt' }).getAttribute('href')
  const text = await paperText(page, receipt ?? '')
  for (const words of [job, 'Wendeline Aas', 'F 49999', 'footswitch', '<b>after</b>', '$600.00'])
    expect(text).toContain(words)
  expect(text).not.toContain('lid')
})

test('its sheet is copied from the same model, and corrected socket by socket', async () => {
  await step(page, 'Amplifier')
  await press(page, /Same model, serial F 40721: copy its sheet/)
  await page.waitForURL(/amps\/[a-z0-9]+/)
  await page.goto(`${amp}/sheet`)
  const roles = await page
    .locator('select[name$=".role"]')
    .evaluateAll((all) => all.map((each) => (each as HTMLSelectElement).value))
  outputs = roles.flatMap((role, row) => (role === 'output' ? [row] : []))
  expect(outputs).toHaveLength(2)
  const count = roles.length
  await press(page, 'Add a socket')
  await fill(page, `sockets.${count}.position`, 'V1')
  for (const row of outputs) await fill(page, `sockets.${row}.senseOhms`, '1')
  await fill(page, `sockets.${outputs[0]}.screenOhms`, '470 000 000')
  await page.getByRole('button', { name: 'Save the sheet' }).first().click()
  await expect(faultOf(`sockets.${outputs[0]}.screenOhms`)).toContainText(/Ω/)
  await expect(box(`sockets.${outputs[0]}.screenOhms`)).toHaveValue('470 000 000')
  await fill(page, `sockets.${outputs[0]}.screenOhms`, '470')
  await page.getByRole('button', { name: 'Save the sheet' }).first().click()
  await expect(faultOf(`sockets.${count}.position`)).toContainText('Position V1 stands twice')
  await page.getByText('Places as numbers').click()
  await fill(page, `sockets.${count}.across`, 'left')
  await page.getByRole('button', { name: 'Save the sheet' }).first().click()
  await expect(box(`sockets.${count}.across`)).toHaveValue('left')
  await expect(page.getByText('a number from 0 to 100, or empty')).toBeVisible()
  await page
    .getByRole('button', { name: /^Take out V1/ })
    .last()
    .click()
  await expect(box(`sockets.${count}.position`)).toHaveCount(0)
  await expect(box(`sockets.${outputs[1]}.senseOhms`)).toHaveValue('1')
  await page.getByRole('button', { name: 'Save the sheet' }).first().click()
  await page.waitForURL(new RegExp(`${amp}(\\?|$)`))
  await page.goto(`/jobs/${job}/amplifier`)
  await expect(page.getByRole('cell', { name: /sense 1 Ω/ })).toHaveCount(2)
})

test('a usual layout fills an empty sheet, and sweeps nothing away', async () => {
  await page.goto('/amps/new?q=Wendeline')
  await page.getByRole('link', { name: /Wendeline Aas/ }).click()
  await fill(page, 'make', 'Tolvane')
  await press(page, 'Save amplifier')
  await expect(faultOf('model')).toContainText('Model is empty')
  await expect(box('make')).toHaveValue('Tolvane')
  await fill(page, 'model', 'Lantern 10')
  await press(page, 'Save amplifier')
  await page.waitForURL(/amps\/[a-z0-9]{20,}/)
  const lantern = new URL(page.url()).pathname
  await page.goto(`${lantern}/sheet`)
  await page
    .getByText('Pair on a cathode resistor')
    .locator('..')
    .getByRole('button', { name: /with tube rectifier/ })
    .click()
  await expect(box('sockets.0.position')).toHaveValue('V1')
  await page.getByRole('button', { name: 'Move V2 up' }).click()
  await expect(box('sockets.0.position')).toHaveValue('V2')
  await page.getByRole('button', { name: 'Save the sheet' }).first().click()
  await page.waitForURL(new RegExp(`${lantern}(\\?|$)`))
  await page.goto(`${lantern}/sheet`)
  await expect(box('sockets.0.position')).toHaveValue('V2')
  await expect(box('sockets.1.position')).toHaveValue('V1')
})

async function readingsOf(phase: 'before' | 'after', drops: readonly [string, string]): Promise<void> {
  await page.goto(`/jobs/${job}/bench/new?phase=${phase}`)
  await fill(page, 'wallVolts', '118,4')
  await fill(page, 'warmupMinutes', '20')
  for (const [index, drop] of drops.entries()) {
    await fill(page, `entries.${index}.plateVolts`, '452')
    await fill(page, `entries.${index}.screenVolts`, '449')
    await fill(page, `entries.${index}.senseDropVolts`, drop)
    await pick(page, `entries.${index}.method`, 'cathode-sense')
  }
}

test('readings: a value out of bounds is refused and kept in its box, then all of it is worked out', async () => {
  await readingsOf('before', ['52,3', '31'])
  await fill(page, 'entries.0.plateVolts', '4520')
  await fill(page, 'note', 'pilot lamp flickers')
  await press(page, 'Save and work out')
  await expect(faultOf('entries.0.plateVolts')).toContainText('4520 V is too high. It must be between 0 and 1200 V')
  await expect(box('entries.0.plateVolts')).toHaveValue('4520')
  await expect(box('entries.1.senseDropVolts')).toHaveValue('31')
  await expect(box('entries.1.method')).toHaveValue('cathode-sense')
  await expect(box('note')).toHaveValue('pilot lamp flickers')
  await fill(page, 'entries.0.plateVolts', '452')
  await press(page, 'Save and work out')
  await page.waitForURL(`**/jobs/${job}/bench`)
  await expect(page.getByText(/too hot for the window/).first()).toBeVisible()
  await expect(page.getByText('pilot lamp flickers')).toBeVisible()
  await expect(tag('on bench')).toBeVisible()
})

test('a set is chosen, the quote is drafted line by line, handed over and accepted', async () => {
  await step(page, 'Tubes')
  const set = page.locator('article').first()
  const marks = ((await set.textContent()) ?? '').match(/T-\d{4}/g) ?? []
  await set.getByRole('button', { name: 'Put this set on the quote' }).click()
  await page.waitForURL(/\/quote/)
  await page.locator('[name="operation"]').selectOption({ index: 1 })
  await press(page, 'Add labor')
  await expect(box('labour.0.text')).not.toHaveValue('')
  await press(page, 'Add a part')
  await fill(page, 'parts.0.unitPrice', '12,5')
  await fill(page, 'note', 'Back on Friday.')
  await press(page, 'Work out and keep the draft')
  await expect(faultOf('parts.0.text')).toContainText('is empty')
  await expect(box('parts.0.unitPrice')).toHaveValue('12,5')
  await expect(box('note')).toHaveValue('Back on Friday.')
  await fill(page, 'parts.0.text', 'Screen resistor 470 Ω 5 W')
  await press(page, 'Propose sentences from the readings')
  await expect(box('findings')).toHaveValue(/V\d/)
  await press(page, 'Work out and keep the draft')
  await expect(page.getByText('The draft is kept.')).toBeVisible()
  await press(page, 'Print and hand over')
  await expect(page.getByText('The quote is out, to be handed over.')).toBeVisible()
  const paper = await page.getByRole('link', { name: 'Print the quote' }).getAttribute('href')
  const text = await paperText(page, paper ?? '')
  for (const words of [...new Set(marks), 'Screen resistor 470 Ω 5 W', '$12.50', 'Wendeline Aas', 'Back on Friday.'])
    expect(text).toContain(words)

  await fill(page, 'deposit', '50')
  await press(page, /accepted$/)
  await expect(refused()).toBeVisible()
  await expect(box('deposit')).toHaveValue('50')
  await pick(page, 'depositHow', 'cash')
  await press(page, /accepted$/)
  await expect(tag('accepted')).toBeVisible()
})

test('work order printed, tubes fitted, lines ticked, on to testing', async () => {
  await page.goto(`/jobs/${job}/work`)
  await press(page, 'Print work order')
  await page.waitForURL('**/papers/**')
  const order = squeezed(await paperText(page, page.url()))
  for (const words of [job, 'Screen resistor', 'Lethal voltage', 'Insulation']) expect(order).toContain(squeezed(words))
  await page.goto(`/jobs/${job}/work`)
  for (const name of [/^Fitted T-/, /^Done /, /^Used /]) {
    const buttons = page.getByRole('button', { name })
    for (let left = await buttons.count(); left > 0; left--) {
      await buttons.first().click()
      await expect(buttons).toHaveCount(left - 1)
    }
  }
  await press(page, 'Work done: go to testing')
  await expect(tag('testing')).toBeVisible()
})

test('after: what is missing is said beside its box; signed, the amplifier is released', async () => {
  await readingsOf('after', ['43,5', '43,9'])
  await press(page, 'Save and work out')
  await page.waitForURL(`**/jobs/${job}/bench`)
  await page.goto(`/jobs/${job}/safety`)
  await press(page, 'Release the amplifier')
  await expect(
    page
      .getByRole('alert')
      .filter({ hasText: /Insulation/ })
      .first(),
  ).toBeVisible()

  const sign = async (
    heading: string,
    boxes: Readonly<Record<string, string>>,
    outcome: 'Pass' | 'Fail' | 'Not tested',
  ) => {
    const line = signLine(heading)
    const folded = line.locator('details:not([open]) > summary')
    if (await folded.count()) await folded.first().click()
    for (const [name, value] of Object.entries(boxes)) await line.locator(`[name="${name}"]`).fill(value)
    const instrument = line.locator('[name="instrumentId"]')
    if (await instrument.count()) await instrument.selectOption({ index: 1 })
    await line.getByRole('button', { name: outcome, exact: true }).click()
  }
  await sign('Insulation', { value: '0,4' }, 'Pass')
  await expect(signLine('Insulation').locator('.field-fault')).toContainText(/0\.4/)
  await expect(signLine('Insulation').locator('[name="value"]')).toHaveValue('0,4')
  await sign('Insulation', { value: '0.4', reason: 'damp' }, 'Fail')
  await expect(signLine('Insulation').locator('.tag').first()).toHaveText('fails')
  const screens = await signLine('Screen resistors').locator('[name^="parts."]').count()
  const parts = Object.fromEntries(Array.from({ length: screens }, (_, index) => [`parts.${index}.ohms`, '470']))
  const lines: readonly (readonly [string, Readonly<Record<string, string>>, 'Pass' | 'Not tested'])[] = [
    ['Discharge proved', { value: '12', detail: '40 s, again after 100 s' }, 'Pass'],
    ['Fuse', { detail: 'T 3 A 250 V' }, 'Pass'],
    ['Cord', { detail: 'three-core' }, 'Pass'],
    ['Safety ground bond', { value: '0,12' }, 'Pass'],
    ['Insulation', { value: '35', reason: '' }, 'Pass'],
    ['Protective conductor', { value: '0.4' }, 'Pass'],
    ['Screen resistors', parts, 'Pass'],
    ['Idle within', {}, 'Pass'],
    ['Full power', { value: '38', detail: '8 Ω, 10 min' }, 'Pass'],
    ['Soak', { value: '90', detail: 'no drift' }, 'Pass'],
    ['Listening', { reason: 'the customer listens at pickup' }, 'Not tested'],
  ]
  for (const [heading, boxes, outcome] of lines) {
    await sign(heading, boxes, outcome)
    await expect(signLine(heading).locator('.tag').first()).toHaveText(outcome === 'Pass' ? 'pass' : 'not tested')
  }
  await press(page, 'Release the amplifier')
  await expect(tag('ready')).toBeVisible()
})

test('pickup: more than the balance is refused, what stays open is asked for, then it is collected', async () => {
  await page.goto(`/jobs/${job}/pickup`)
  await press(page, 'Hand over')
  await expect(faultOf('itemsNote')).toBeVisible()
  await press(page, /^Laid ready/)
  await expect(page.getByText('laid ready')).toBeVisible()
  const balance = await box('amount').inputValue()
  await fill(page, 'amount', '99999')
  await pick(page, 'how', 'card')
  await press(page, 'Take payment')
  await expect(faultOf('amount')).toContainText(/99,999\.00/)
  await expect(box('amount')).toHaveValue('99999')
  await expect(box('how')).toHaveValue('card')
  await fill(page, 'amount', balance)
  await press(page, 'Take payment')
  await expect(page.getByRole('row', { name: /Balance/ })).toContainText('$0.00')
  await pick(page, 'who', 'someone else')
  await fill(page, 'name', 'Jorun Aas')
  await press(page, 'Hand over')
  await expect(faultOf('identity')).toBeVisible()
  await expect(box('name')).toHaveValue('Jorun Aas')
  await fill(page, 'identity', 'driving licence')
  await press(page, 'Hand over')
  await page.waitForURL('**/papers/**')
  const sheet = squeezed(await paperText(page, page.url()))
  for (const words of [
    job,
    'Wendeline Aas',
    'Jorun Aas',
    'footswitch',
    'the customer listens at pickup',
    'Lethal voltage',
  ])
    expect(sheet).toContain(squeezed(words))
  await page.goto(`/jobs/${job}`)
  await expect(tag('collected')).toBeVisible()
  const history = page.getByRole('region', { name: 'History' })
  for (const did of ['Taken in as job', 'Readings before the work taken', 'accepted', 'Readings after', 'handed over'])
    await expect(history.getByText(new RegExp(did, 'i')).first()).toBeAttached()
})
