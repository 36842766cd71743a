/**
 * The choice of a set as the page of a job asks for it, database and all: 100,000 tubes of one
 * type in stock that may stand there and 2,000 that may not, amplifiers with two, four and six
 * sockets read at the bench. Measured in the process of the server: everything the page reads and
 * reckons, from the shop's settings to the sets and the picture of the stock. The drawing of the
 * page by the framework and the session are not in it. The goal is held against both: the time on
 * the wall, in which is what else the machine does, and that of the processor, in which is what
 * other threads do for the process (collecting garbage, compiling).
 *
 * Cold: nothing is kept yet; how long others had to wait meanwhile is beside it. Warm: asked
 * again. Other limits: each time an age of the tests that was not asked for before. After a
 * sale, after a hold: one tube was, just before. The reference is the same from scratch: every
 * record read, every tube predicted. That both propose the very same is checked.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { monitorEventLoopDelay, performance } from 'node:perf_hooks'
import { isDeepStrictEqual } from 'node:util'
import { groupCircuit } from '@/app/jobs/[jobNumber]/bench/group-circuit'
import { latestBench } from '@/app/jobs/[jobNumber]/latest-bench'
import { LISTED, proposeForGroup, shownSets } from '@/app/jobs/[jobNumber]/tubes/group-proposal'
import type { Limits } from '@/app/jobs/[jobNumber]/tubes/limits-form'
import { groupDemand } from '@/lib/domain/bench/group-demand'
import { dayInZone } from '@/lib/domain/calendar'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import type { Proposal } from '@/lib/domain/matching/proposal'
import { proposeSet } from '@/lib/domain/matching/propose-set'
import { stockSample } from '@/lib/domain/matching/stock-sample'
import { money } from '@/lib/domain/money'
import { candidatesOf } from '@/lib/domain/stock/candidate-of'
import { stockPredictions } from '@/lib/domain/stock/stock-predictions'
import { NOTHING_FURTHER } from '@/lib/domain/stock/tube-further'
import { amps, siemens, volts } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import type { Figure } from '@/lib/setup/bench'
import { migrate } from '@/lib/setup/migrate'
import { findCarrying } from '@/lib/store/carrying'
import { closeDatabase, databasePath, db, inTransaction } from '@/lib/store/database'
import { findJob } from '@/lib/store/job'
import { findLatestQuote } from '@/lib/store/quote'
import { createShop, findShop } from '@/lib/store/shop'
import { findTube, listStockForFamily, saveWhereabouts, setHold } from '@/lib/store/tube'
import { type BulkTube, importedId, insertTubes } from '@/lib/store/tube-bulk'
import { generator } from '@/tests/domain/matching/tubes'
import { jobInCircuit } from '@/tests/support/job-in-circuit'
import { done } from '@/tests/support/quoted-job'
import { SHOP } from '@/tests/support/stocked-shop'

export const name = 'choose-request'

const TUBES = 102_000
const PART = 2000
const ROUNDS = 7
const SEED = 20_251_125
const GOAL = 150

export async function run(): Promise<readonly Figure[]> {
  const folder = mkdtempSync(join(tmpdir(), 'benchglow-choose-'))
  process.env.BENCHGLOW_DATA = folder
  try {
    await migrate(databasePath())
    await inTransaction((tx) => createShop(tx, SHOP))
    await stockUp()
    const figures: Figure[] = []
    for (const count of [2, 4, 6]) figures.push(...(await figuresFor(count, await jobInCircuit(count, new Date()))))
    return figures
  } finally {
    await closeDatabase()
    rmSync(folder, { recursive: true, force: true })
  }
}

/** One in so many is of a plainer type of the family, whose rating these amplifiers exceed: beside the 100,000. */
const PLAINER = 51

async function stockUp(): Promise<void> {
  const random = generator(SEED)
  const today = Date.now()
  await db().import.create({
    data: {
      id: 'bench',
      fileName: 'bench',
      at: new Date(today),
      person: 'Ines',
      state: 'done',
      rows: 0,
      taken: 0,
      refused: 0,
    },
  })
  for (let first = 0; first < TUBES; first += PART) {
    const tubes = Array.from({ length: PART }, (_, at) => inventedTube(first + at, random, today))
    await inTransaction((tx) => insertTubes(tx, tubes, { importId: 'bench', createdAt: new Date(today) }))
  }
}

function inventedTube(row: number, random: () => number, today: number): BulkTube {
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
  const strength = normal()
  const designation = row % PLAINER === 0 ? '5881' : '6L6GC'
  const plateCurrent = amps(Math.max(5, Math.round(7200 * (1 + 0.1 * strength)) / 100) / 1000)
  const slope = 6000 * (1 + 0.05 * strength + 0.06 * normal())
  const transconductance = siemens(Math.max(500, Math.round(slope)) / 1e6)
  const details: BulkTube['details'] = {
    ...{ mark: `B-${row + 1}`, designation, condition: 'used-tested', acquired: '', construction: '' },
    ...{ location: `Drawer ${row % 40}`, cost: null, price: money(Math.round(3400 * (0.8 + 0.5 * random()))) },
  }
  const test: BulkTube['test'] = {
    ...{ testedAt: new Date(today - 86_400_000 * Math.floor(1 + 360 * random())), testedBy: 'Ines' },
    ...{ instrumentName: 'Bench tester 1', calibratedOn: null, shorts: false },
    ...{ plateVoltage: volts(250), screenVoltage: volts(250), gridVoltage: volts(-14) },
    ...{ leakage: '', gas: '', noise: '', microphony: null, note: '' },
    sections: [{ section: 1, plateCurrent, screenCurrent: null, transconductance }],
  }
  return { details, further: NOTHING_FURTHER, family: '6L6', whereabouts: 'in-stock', test, row }
}

const LIMITS: Limits = {
  ...{ age: 365, cap: null, over: false, one: false, at: 'amp', on: '' },
  ...{ typed: { age: '365', cap: '' }, faults: [] },
}

/** All that the page reads and reckons. */
async function request(jobNumber: string, age = 365) {
  const shop = await findShop()
  const job = await findJob(jobNumber)
  if (!shop || !job) throw new Error('No shop, or no job')
  const [bench] = await Promise.all([latestBench(job, shop), findLatestQuote(job.id)])
  const limits: Limits = { ...LIMITS, age }
  const asked = done(await proposeForGroup({ group: 'output', bench, job, shop, limits }))
  if (!asked.basis.ok || !asked.proposal.best) throw new Error('Nothing was predicted, or no set found')
  const shown = shownSets(asked.proposal)
  const sample = stockSample(asked.running, asked.proposal.best)
  return { ...asked, shown, sample, bench, job, shop, limits }
}

type Answer = Awaited<ReturnType<typeof request>>

/** The same without anything kept. */
async function fromScratch({ bench, job, shop, limits }: Answer): Promise<Proposal> {
  const now = new Date()
  const { demand } = done(groupDemand(bench.sheet, 'output', bench.result, shop))
  const circuit = done(await groupCircuit(bench, 'output', shop))
  const stock = await listStockForFamily(demand.family)
  const carrying = await findCarrying(limits.on)
  const view = { now, timeZone: shop.timeZone, jobInHand: job.id, catalogue: shop, words: wordsFor(shop.words) }
  const predictions = done(stockPredictions(stock, circuit, { ...view, readOn: '' }))
  const plain = {
    ...{ maximumTestAgeDays: limits.age, allowOverPrintedRating: limits.over, priceCap: limits.cap },
    ...{ oneDesignation: limits.one, yardsticks: USUAL_YARDSTICKS, predictions, carrying },
    asOf: dayInZone(now, shop.timeZone),
  }
  return proposeSet(candidatesOf(stock, view), demand, plain, LISTED)
}

/** Milliseconds: of the processor, garbage collection in all its threads included, and on the wall. */
type Spent = { readonly core: number; readonly wall: number }

async function timed<T>(work: () => Promise<T>): Promise<Spent & { readonly found: T }> {
  const [began, used] = [performance.now(), process.cpuUsage()]
  const found = await work()
  const wall = performance.now() - began
  const { user, system } = process.cpuUsage(used)
  return { found, core: (user + system) / 1000, wall }
}

/** Medians; `before` is not in them. */
async function median(
  work: (round: number) => Promise<unknown>,
  before?: (round: number) => Promise<unknown>,
): Promise<Spent> {
  const all: Spent[] = []
  for (let round = 0; round < ROUNDS; round += 1) {
    await before?.(round)
    all.push(await timed(() => work(round)))
  }
  const middle = (key: keyof Spent) => all.map((one) => one[key]).toSorted((a, b) => a - b)[Math.floor(ROUNDS / 2)]
  return { core: middle('core') ?? Number.NaN, wall: middle('wall') ?? Number.NaN }
}

async function figuresFor(count: number, jobNumber: string): Promise<Figure[]> {
  const waits = monitorEventLoopDelay({ resolution: 1 })
  waits.enable()
  const cold = await timed(() => request(jobNumber))
  waits.disable()
  const warm = await median(() => request(jobNumber))
  const other = await median((round) => request(jobNumber, 300 + round))
  const [first] = cold.found.proposal.best?.tubes ?? []
  const sold = await median(
    () => request(jobNumber),
    // The first of the set that was proposed, then any.
    (round) => sell(round === 0 && first ? first.candidate.tubeId : idOf(round * 997 + count)),
  )
  const held = await median(
    () => request(jobNumber),
    (round) => hold(idOf(round * 1009 + count)),
  )
  const kept = await request(jobNumber)
  const scratch = await timed(() => fromScratch(kept))
  const both = (what: string, spent: Spent, goal: number | null): Figure[] => [
    { figure: `${count} ${what}`, value: spent.core, reference: scratch.core, goal, unit: 'ms', better: 'lower' },
    {
      figure: `${count} ${what}, wall`,
      value: spent.wall,
      reference: scratch.wall,
      goal,
      unit: 'ms',
      better: 'lower',
    },
  ]
  return [
    ...both('warm', warm, GOAL),
    ...both('warm, other limits', other, GOAL),
    ...both('after a sale', sold, GOAL),
    ...both('after a hold', held, GOAL),
    ...both('cold', cold, null),
    {
      figure: `${count} cold: longest that others wait`,
      value: waits.max / 1e6,
      ...{ unit: 'ms', reference: null, goal: null, better: 'lower' },
    },
    {
      figure: `${count}: the same as from scratch`,
      value: isDeepStrictEqual(kept.proposal, scratch.found) ? 1 : 0,
      ...{ unit: '1 is yes', reference: null, goal: 1, better: 'higher' },
    },
  ]
}

const idOf = (row: number): string => importedId('bench', row)

async function sell(id: string): Promise<void> {
  const tube = await findTube(id)
  if (!tube || !(await inTransaction((tx) => saveWhereabouts(tx, tube, 'sold', new Date())))) {
    throw new Error(`${id} was not sold`)
  }
}

async function hold(id: string): Promise<void> {
  const now = new Date()
  const until = new Date(now.getTime() + 3_600_000)
  const held = await inTransaction((tx) =>
    setHold(tx, [id], { hold: 'held', jobId: 'another', quoteId: id, until, now }),
  )
  if (!held) throw new Error(`${id} was not held`)
}
