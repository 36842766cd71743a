/**
 * Every page of the demo shop, and every step of every one of its jobs: it opens, without a word of
 * complaint in the console, and fits a desk, a tablet and a telephone without scrolling sideways.
 * One page of each kind is looked through for what shuts people out, in daylight and workshop dark.
 */
import { AxeBuilder } from '@axe-core/playwright'
import { type BrowserContext, expect, type Page, test } from '@playwright/test'
import { seatOf } from './demo-people'

const WIDTHS = [1440, 820, 390]
const STEPS = ['', '/amplifier', '/bench', '/tubes', '/quote', '/work', '/safety', '/pickup']
const AMP_PAGES = ['/sheet', '/sheet/print', '/supply', '/substitutes']
const ROOTS = [
  ...['/', '/jobs/new', '/jobs/new?customer=new', '/customers', '/customers/new', '/amps', '/amps/new', '/stock'],
  ...['/stock/new', '/stock/receive', '/types', '/types?q=vt', '/types/new?like=EL34', '/outbox', '/find?q=a'],
  ...['/settings', '/settings/people', '/settings/people/new'],
  ...['/settings/instruments', '/settings/instruments/new', '/settings/operations', '/settings/operations/new'],
  ...[
    '/settings/mail',
    '/settings/pass-phrase',
    '/share-out',
    '/stock/sets?milliamps=5&percent=10&level=3',
    '/settings/makers',
    '/settings/makers/new',
  ],
  ...['/stock/test-sheet', '/stock/lots', '/stock/lots/new', '/stock/parts', '/stock/parts/new', '/stock/exchange'],
  ...['/stock/labels?marks=T-0001..T-0004', '/stock/prices?type=6L6GC', '/settings/labels', '/settings/labels/new'],
  ...['/settings/instruments/corrections'],
]

/** By its id; the stock has other pages of its own beside. */
const TUBE_PAGE = /^\/stock\/c\w{20,}$/

// Some three hundred pages; a minute on a quiet desk.
test.describe.configure({ mode: 'serial', timeout: 300_000 })

let context: BrowserContext
/** Two pages at a time: one is drawn while the server works on the other. */
let lanes: Page[] = []
const complaints: string[] = []

test.beforeAll(async ({ browser }) => {
  const seat = await seatOf(browser, 'tess', { viewport: { width: 1440, height: 900 } })
  context = seat.context
  // A link that never comes into view fetches nothing ahead; a dozen pages of it stand behind every page.
  await context.addInitScript(() => {
    window.IntersectionObserver = class {
      observe() {}
      unobserve() {}
      disconnect() {}
      takeRecords() {
        return []
      }
    } as unknown as typeof IntersectionObserver
  })
  lanes = [seat.page, await context.newPage()]
  for (const page of lanes) {
    page.on('console', (line) => {
      if (line.type() === 'error' || line.type() === 'warning') complaints.push(`${page.url()}: ${line.text()}`)
    })
    page.on('pageerror', (error) => complaints.push(`${page.url()}: ${error.message}`))
  }
})
test.afterAll(() => context.close())

async function linksOn(page: Page, address: string, fitting: RegExp): Promise<string[]> {
  await page.goto(address)
  const all = await page.locator('a[href]').evaluateAll((links) => links.map((link) => link.getAttribute('href') ?? ''))
  return [...new Set(all.filter((href) => fitting.test(href)))]
}

/** What is wrong with a page, in a few words each. */
async function lookAt(page: Page, address: string): Promise<string[]> {
  const response = await page.goto(address)
  if (response?.status() !== 200) return [`${address} answers ${response?.status()}`]
  const faults: string[] = []
  // From where the last page ended: widening and narrowing by turns spares a third of the work.
  const narrow = page.viewportSize()?.width === WIDTHS.at(-1)
  for (const width of narrow ? WIDTHS.toReversed() : WIDTHS) {
    if (page.viewportSize()?.width !== width) await page.setViewportSize({ width, height: 900 })
    const wide = await page.evaluate(() => document.documentElement.scrollWidth)
    if (wide > width) faults.push(`${address} is ${wide} px wide in a window of ${width} px`)
  }
  return faults
}

async function lookAtAll(addresses: readonly string[]): Promise<string[]> {
  const waiting = [...addresses]
  const faults: string[] = []
  const walk = async (page: Page) => {
    for (let address = waiting.shift(); address !== undefined; address = waiting.shift())
      faults.push(...(await lookAt(page, address)))
  }
  await Promise.all(lanes.map(walk))
  return faults
}

let jobs: string[] = []

test('every step of every job opens, says nothing in the console and fits three widths', async () => {
  const [page] = lanes as [Page]
  // The day shows the open ones and the last that went; the customers have them all.
  const customers = await linksOn(page, '/customers', /^\/customers\/(?!new)/)
  for (const customer of customers) jobs.push(...(await linksOn(page, customer, /^\/jobs\/\d+-\d$/)))
  jobs.push(...(await linksOn(page, '/', /^\/jobs\/\d+-\d$/)))
  jobs = [...new Set(jobs)].sort()
  expect(jobs.length).toBeGreaterThanOrEqual(28)
  expect(await lookAtAll(jobs.flatMap((job) => STEPS.map((step) => `${job}${step}`)))).toEqual([])
  expect(complaints).toEqual([])
})

test('every other page opens, says nothing in the console and fits three widths', async () => {
  const [page] = lanes as [Page]
  const found = [
    ...(await linksOn(page, '/customers', /^\/customers\/(?!new)/)),
    ...(await linksOn(page, '/amps', /^\/amps\/(?!new)/)),
    ...(await linksOn(page, '/stock', TUBE_PAGE)).slice(0, 8),
    // An own type, which stands first, and one of each class.
    ...(await linksOn(page, '/types', /^\/types\/(?!new)/)).slice(0, 1),
    ...['6V6', 'EL34', '2A3', 'ECL82', '12AX7', '12DW7', 'EF86', '5AR4', '7868'].map((type) => `/types/${type}`),
    ...(await linksOn(page, '/settings/people', /^\/settings\/people\/(?!new)/)),
    ...(await linksOn(page, '/settings/instruments', /^\/settings\/instruments\/(?!new)/)).slice(0, 2),
    ...(await linksOn(page, '/settings/operations', /^\/settings\/operations\/(?!new)/)).slice(0, 2),
  ]
  const amps = found.filter((address) => address.startsWith('/amps/'))
  expect(amps.length).toBeGreaterThanOrEqual(20)
  const sheets = amps.slice(0, 6).flatMap((amp) => AMP_PAGES.map((page) => `${amp}${page}`))
  const tubes = found.filter((address) => TUBE_PAGE.test(address)).slice(0, 3)
  const [job] = jobs
  const readings = [`${job}/bench/new?phase=before`, `${job}/bench/new?phase=after`]
  expect(await lookAtAll([...ROOTS, ...found, ...sheets, ...tubes.map((tube) => `${tube}/uses`), ...readings])).toEqual(
    [],
  )
  expect(complaints).toEqual([])
})

async function jobThatIs(page: Page, state: string): Promise<string> {
  await page.goto('/')
  const link = page.getByRole('region', { name: new RegExp(`^${state}`) }).getByRole('link')
  return (await link.first().getAttribute('href')) ?? ''
}

async function oneOfEachKind(page: Page): Promise<string[]> {
  const first = async (from: string) =>
    (await linksOn(page, from, /^\/(settings\/)?\w+\/(?!new|receive)[\w-]+$/))[0] ?? ''
  const amp = await first('/amps')
  // The shop’s own stand before those of the handbook.
  const ownType = await first('/types')
  const [waiting, tested, ready] = [
    await jobThatIs(page, 'Waiting for answer'),
    await jobThatIs(page, 'Testing'),
    await jobThatIs(page, 'Ready'),
  ]
  return [
    ...ROOTS,
    ...[
      amp,
      ...AMP_PAGES.map((kind) => `${amp}${kind}`),
      await first('/customers'),
      (await linksOn(page, '/stock', TUBE_PAGE))[0] ?? '',
    ],
    ...['/types/6V6', '/types/5AR4', ownType, `${ownType}/edit`],
    ...[await first('/settings/people'), await first('/settings/instruments'), await first('/settings/operations')],
    ...STEPS.map((step) => `${tested}${step}`),
    ...[`${tested}/bench/new?phase=after`, `${waiting}/quote`, `${ready}/pickup`],
  ]
}

/** Serious and critical findings of axe-core, as "rule: where". */
async function barriers(page: Page, only?: string): Promise<string[]> {
  // The other mode merges frames in a page of its own; there are none here.
  const builder = new AxeBuilder({ page }).setLegacyMode(true).options({ resultTypes: ['violations'] })
  const { violations } = await (only ? builder.withRules([only]) : builder).analyze()
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(' | ')}`)
}

test('a barrier that is there is found: a picture without words, pale letters', async () => {
  const page = await context.newPage()
  await page.setContent(
    '<html lang="en"><body><img src="data:,"><p style="color:#bbb;background:#fff">pale</p></body></html>',
  )
  const found = (await barriers(page)).join('\n')
  expect(found).toContain('image-alt')
  expect(found).toContain('color-contrast')
  await page.close()
})

test('nothing serious shuts anybody out, in daylight and in workshop dark', async () => {
  const [page] = lanes as [Page]
  const waiting = await oneOfEachKind(page)
  const found: string[] = []
  const walk = async (lane: Page) => {
    await lane.setViewportSize({ width: 1440, height: 900 })
    for (let address = waiting.shift(); address !== undefined; address = waiting.shift()) {
      await lane.emulateMedia({ colorScheme: 'light' })
      await lane.goto(address)
      for (const fault of await barriers(lane)) found.push(`${address} ${fault}`)
      await lane.emulateMedia({ colorScheme: 'dark' })
      for (const fault of await barriers(lane, 'color-contrast')) found.push(`${address} in the dark ${fault}`)
    }
  }
  await Promise.all(lanes.map(walk))
  expect(found).toEqual([])
})
