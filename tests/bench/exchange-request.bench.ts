/**
 * The exchange of one tube of four as its page asks for it, database and all: 20,000 tubes of one
 * type and as many twin triodes in stock. Measured in the process of the server: everything the page reads
 * and reckons, as in choose-request, of which the goal is too. Processor time counts.
 *
 * Cold: nothing is kept yet. Warm: asked again. After a sale, after a hold: one tube was, just
 * before. The reference is the same from scratch: every record read, every tube predicted and
 * tried. That both rank the very same is checked. Of a phase inverter nothing is kept: its
 * reference is the reading of all records alone.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { isDeepStrictEqual } from 'node:util'
import { predictionsIn } from '@/app/jobs/[jobNumber]/bench/group-circuit'
import { comparedSets } from '@/app/jobs/[jobNumber]/tubes/exchange/reckoning/compared-sets'
import { type ExchangeView, exchangeView } from '@/app/jobs/[jobNumber]/tubes/exchange/reckoning/exchange-view'
import { offersOf } from '@/app/jobs/[jobNumber]/tubes/exchange/reckoning/offers'
import type { Limits } from '@/app/jobs/[jobNumber]/tubes/limits-form'
import { money } from '@/lib/domain/money'
import { candidateOf, candidatesOf } from '@/lib/domain/stock/candidate-of'
import type { SectionReading } from '@/lib/domain/stock/tube'
import { NOTHING_FURTHER } from '@/lib/domain/stock/tube-further'
import { volts } from '@/lib/domain/units'
import type { Figure } from '@/lib/setup/bench'
import { migrate } from '@/lib/setup/migrate'
import { findCarrying } from '@/lib/store/carrying'
import { closeDatabase, databasePath, db, inTransaction } from '@/lib/store/database'
import { createShop } from '@/lib/store/shop'
import { findTube, listStockForFamily, saveWhereabouts, setHold } from '@/lib/store/tube'
import { type BulkTube, importedId, insertTubes } from '@/lib/store/tube-bulk'
import { chooseTubes } from '@/lib/workflow/tubes/choose-tubes'
import { replaceOne } from '@/tests/domain/matching/replacing/replace-one'
import { generator } from '@/tests/domain/matching/tubes'
import { jobInCircuit } from '@/tests/support/job-in-circuit'
import { atBench } from '@/tests/support/person-at-work'
import { done, draftWith, jobOf, shopOnFile } from '@/tests/support/quoted-job'
import { SHOP, section } from '@/tests/support/stocked-shop'

export const name = 'exchange-request'

const TUBES = 20_000
const PART = 2000
const ROUNDS = 7
const GOAL = 150

export async function run(): Promise<readonly Figure[]> {
  const folder = mkdtempSync(join(tmpdir(), 'benchglow-exchange-'))
  process.env.BENCHGLOW_DATA = folder
  try {
    await migrate(databasePath())
    await inTransaction((tx) => createShop(tx, SHOP))
    await stockUp()
    return await figuresFor(await quotedJob())
  } finally {
    await closeDatabase()
    rmSync(folder, { recursive: true, force: true })
  }
}

type Sort = Pick<BulkTube, 'family'> & {
  readonly prefix: string
  readonly designation: string
  readonly screen: number | null
  readonly grid: number
  readonly sections: (normal: () => number) => SectionReading[]
}

const SORTS: Readonly<Record<'output' | 'twin', Sort>> = {
  output: {
    ...{ prefix: 'B', designation: '6L6GC', family: '6L6', screen: 250, grid: -14 },
    sections: (normal) => [section(rounded(72 + 7 * normal()), rounded(6 + 0.4 * normal()))],
  },
  twin: {
    ...{ prefix: 'T', designation: '12AX7', family: '12AX7', screen: null, grid: -2 },
    sections: (normal) =>
      ([1, 2] as const).map((of) => section(rounded(1.2 + 0.1 * normal()), rounded(1.6 + 0.1 * normal()), of)),
  },
}

const rounded = (value: number): number => Math.max(0.5, Math.round(100 * value) / 100)

async function stockUp(): Promise<void> {
  const random = generator(20_251_125)
  const at = new Date()
  for (const [id, sort] of Object.entries(SORTS)) {
    const counts = { state: 'done', rows: 0, taken: 0, refused: 0 }
    await db().import.create({ data: { id, fileName: id, at, person: 'Ines', ...counts } })
    for (let first = 0; first < TUBES; first += PART) {
      const tubes = Array.from({ length: PART }, (_, row) => inventedTube(first + row, sort, random))
      await inTransaction((tx) => insertTubes(tx, tubes, { importId: id, createdAt: at }))
    }
  }
}

function inventedTube(row: number, sort: Sort, random: () => number): BulkTube {
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
  const { prefix, designation, family, screen, grid } = sort
  const details: BulkTube['details'] = {
    ...{ mark: `${prefix}-${row + 1}`, designation, condition: 'used-tested', acquired: '', construction: '' },
    ...{ location: `Drawer ${row % 40}`, cost: null, price: money(Math.round(2700 + 1700 * random())) },
  }
  const test: BulkTube['test'] = {
    ...{ testedAt: new Date(Date.now() - 86_400_000 * Math.floor(1 + 360 * random())), testedBy: 'Ines' },
    ...{ instrumentName: 'Bench tester 1', calibratedOn: null, shorts: false },
    ...{ plateVoltage: volts(250), screenVoltage: screen === null ? null : volts(screen), gridVoltage: volts(grid) },
    ...{ leakage: '', gas: '', noise: '', microphony: null, note: '', sections: sort.sections(normal) },
  }
  return { details, further: NOTHING_FURTHER, family, whereabouts: 'in-stock', test, row }
}

/** Its draft names four tubes and a twin. */
async function quotedJob(): Promise<string> {
  const number = await jobInCircuit(4)
  await draftWith(number)
  const quoted = async (group: string, tubes: { tubeId: string; socketPosition: string }[]) =>
    done(await chooseTubes(atBench(), await shopOnFile(), { jobNumber: number, group, tubes, match: null }))
  const four = [100, 107, 114, 121].map((row, at) => ({
    tubeId: importedId('output', row),
    socketPosition: `V${at + 1}`,
  }))
  await quoted('output', four)
  await quoted('', [{ tubeId: importedId('twin', 5), socketPosition: 'V8' }])
  return number
}

const LIMITS: Limits = {
  ...{ age: 365, cap: null, over: false, one: false, at: 'amp', on: '' },
  ...{ typed: { age: '365', cap: '' }, faults: [] },
}

/** All that the page reads and reckons. */
async function request(number: string, position: string) {
  const asked = { position, mark: '', work: false }
  const view = done(await exchangeView({ job: await jobOf(number), shop: await shopOnFile(), asked, limits: LIMITS }))
  const compared = await comparedSets(view)
  const { best } = await offersOf(view, compared)
  if (best.length === 0 || compared.notPredicted !== '') throw new Error('Nothing is offered, or not predicted')
  return { view, offers: best.map(({ tube: { mark }, option }) => ({ mark, option })) }
}

/** The same without anything kept; no tube costs more than a draft allows. */
async function fromScratch(view: ExchangeView) {
  const { circuit, bench, shop, out, beside, place, quote } = view
  const stock = await listStockForFamily(place.demand.family)
  const carrying = await findCarrying()
  const predictions = done(predictionsIn(done(circuit), stock, { bench, shop, now: view.view.now, carrying }))
  const staying = beside.map(({ stocked }) => candidateOf(stocked, view.view))
  const set = { beside: staying, out: candidateOf(out, view.view), stock: candidatesOf(stock, view.view) }
  const { ranked, setWith } = done(replaceOne(set, place.demand, { ...view.limits, predictions, carrying }))
  const free = ranked.filter(({ tubeId }) => quote.lines.every((line) => line.tubeId !== tubeId))
  return free.slice(0, 5).map(({ mark, tubeId }) => ({ mark, option: setWith(tubeId) }))
}

/** Milliseconds of the processor. */
async function timed<T>(work: () => Promise<T>): Promise<{ readonly found: T; readonly core: number }> {
  const used = process.cpuUsage()
  const found = await work()
  const { user, system } = process.cpuUsage(used)
  return { found, core: (user + system) / 1000 }
}

async function median(work: () => Promise<unknown>, before?: (round: number) => Promise<unknown>): Promise<number> {
  const all: number[] = []
  for (let round = 0; round < ROUNDS; round += 1) {
    await before?.(round)
    all.push((await timed(work)).core)
  }
  return all.toSorted((a, b) => a - b)[Math.floor(ROUNDS / 2)] ?? Number.NaN
}

async function figuresFor(number: string): Promise<Figure[]> {
  const ask = () => request(number, 'V1')
  const cold = await timed(ask)
  const warm = await median(ask)
  const sold = await median(ask, (round) => sell(importedId('output', 500 + round * 997)))
  const held = await median(ask, (round) => hold(importedId('output', 600 + round * 1009)))
  const { view, offers } = await ask()
  const scratch = await timed(() => fromScratch(view))
  const twins = await median(() => request(number, 'V8'))
  const allTwins = await timed(() => listStockForFamily('12AX7'))
  const spent = (figure: string, value: number, goal: number | null, reference = scratch.core): Figure => ({
    ...{ figure, value, reference, goal, unit: 'ms', better: 'lower' },
  })
  return [
    spent('warm', warm, GOAL),
    spent('after a sale', sold, GOAL),
    spent('after a hold', held, GOAL),
    spent('cold', cold.core, null),
    spent('phase inverter', twins, null, allTwins.core),
    {
      ...{ figure: 'the same as from scratch', value: isDeepStrictEqual(offers, scratch.found) ? 1 : 0 },
      ...{ unit: '1 is yes', reference: null, goal: 1, better: 'higher' },
    },
  ]
}

async function sell(id: string): Promise<void> {
  const tube = await findTube(id)
  if (!tube || !(await inTransaction((tx) => saveWhereabouts(tx, tube, 'sold', new Date()))))
    throw new Error(`${id} was not sold`)
}

async function hold(id: string): Promise<void> {
  const now = new Date()
  const until = new Date(now.getTime() + 3_600_000)
  const another = { hold: 'held', jobId: 'another', quoteId: id, until, now } as const
  if (!(await inTransaction((tx) => setHold(tx, [id], another)))) throw new Error(`${id} was not held`)
}
