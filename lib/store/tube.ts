/**
 * Stocked tubes: reading them, writing them down, and the guarded moves that keep
 * one tube from being in two sets. A guarded move is one `updateMany` that names
 * the state it starts from; it answers false when that state no longer held, and
 * the caller then leaves its transaction without saving.
 */
import type { Prisma } from '@/generated/sqlite/client'
import type { Day } from '@/lib/domain/calendar'
import { fold } from '@/lib/domain/fold'
import { type Money, money } from '@/lib/domain/money'
import { stockedTube } from '@/lib/domain/stock/latest-test'
import {
  conditionWord,
  type StockedTube,
  type Tube,
  type TubeCondition,
  type TubeDetails,
  type TubeFitting,
  type TubeHold,
  type TubeTest,
  type TubeTestFacts,
  type Whereabouts,
} from '@/lib/domain/stock/tube'
import { furtherTexts, NOTHING_FURTHER, type TubeFurther } from '@/lib/domain/stock/tube-further'
import { readMark } from '@/lib/domain/stock/tube-mark'
import { db, type Tx } from './database'
import { TEST_ORDER, testColumns, testsByTube, tubeColumns, tubeOf } from './tube-rows'
import { setIdOf } from './tube-set'

type Rows = Parameters<typeof tubeOf>[0][]

async function jobNumbersOf(tx: Tx, rows: Rows): Promise<ReadonlyMap<string, string>> {
  const ids = [...new Set(rows.flatMap(({ heldForJob }) => heldForJob ?? []))]
  if (ids.length === 0) return new Map()
  const jobs = await tx.job.findMany({ where: { id: { in: ids } }, select: { id: true, number: true } })
  return new Map(jobs.map(({ id, number }) => [id, number]))
}

async function tubesOf(tx: Tx, rows: Rows): Promise<Tube[]> {
  const numbers = await jobNumbersOf(tx, rows)
  return rows.map((row) => tubeOf(row, numbers))
}

export async function findTube(id: string, tx: Tx = db()): Promise<Tube | null> {
  const row = await tx.tube.findUnique({ where: { id }, select: tubeColumns })
  return row && ((await tubesOf(tx, [row]))[0] ?? null)
}

/** However it is typed: "t 0147" is T-0147. */
export async function findTubeByMark(mark: string, tx: Tx = db()): Promise<Tube | null> {
  const row = await tx.tube.findUnique({ where: { mark: readMark(mark) ?? '' }, select: tubeColumns })
  return row && ((await tubesOf(tx, [row]))[0] ?? null)
}

/** In the order of the ids asked for; an id that is not there is left out. */
export async function listTubesById(ids: readonly string[], tx: Tx = db()): Promise<StockedTube[]> {
  const stocked = await listStocked(tx, { id: { in: [...ids] } })
  const byId = new Map(stocked.map((each) => [each.tube.id, each]))
  return ids.flatMap((id) => byId.get(id) ?? [])
}

/** Every tube of the family in stock, held ones included, with the record that speaks for it. Two queries for the tubes and their tests. */
export async function listStockForFamily(family: string, tx: Tx = db()): Promise<StockedTube[]> {
  return listStocked(tx, { family, whereabouts: 'in-stock' })
}

export async function listIdsInStock(family: string): Promise<string[]> {
  const rows = await db().$queryRaw<{ id: string }[]>`
    SELECT "id" FROM "Tube" WHERE "family" = ${family} AND "whereabouts" = 'in-stock' ORDER BY "id"`
  return rows.map(({ id }) => id)
}

/**
 * Those of the ids, 900 at most, that are of the family and in stock. Found by id alone: told the
 * family too, SQLite walks through all of it.
 */
export async function listStockOf(family: string, ids: readonly string[]): Promise<StockedTube[]> {
  const found = await db().tube.findMany({ where: { id: { in: [...ids] } }, select: tubeColumns })
  const rows = found.filter((row) => row.family === family && row.whereabouts === 'in-stock')
  const ofThese = { tubeId: { in: rows.map(({ id }) => id) } }
  const tests = await db().tubeTest.findMany({ where: ofThese, orderBy: TEST_ORDER, select: testColumns })
  return withTests(await tubesOf(db(), rows), tests)
}

async function listStocked(tx: Tx, where: Prisma.TubeWhereInput): Promise<StockedTube[]> {
  const rows = await tx.tube.findMany({ where, orderBy: { mark: 'asc' }, select: tubeColumns })
  const tubes = await tubesOf(tx, rows)
  const tests = await tx.tubeTest.findMany({ where: { tube: where }, orderBy: TEST_ORDER, select: testColumns })
  return withTests(tubes, tests)
}

function withTests(tubes: readonly Tube[], rows: Parameters<typeof testsByTube>[0]): StockedTube[] {
  const tests = testsByTube(rows)
  return tubes.map((tube) => stockedTube(tube, tests.get(tube.id) ?? []))
}

export const STOCK_VIEWS = ['in-stock', 'free', 'held', 'untested', 'fitted', 'out', 'all'] as const
export type StockView = (typeof STOCK_VIEWS)[number]

export type StockQuery = {
  readonly search?: string
  readonly family?: string
  readonly view?: StockView
  /** From 1. */
  readonly page?: number
  readonly now: Date
}

export type StockPage = {
  readonly tubes: readonly StockedTube[]
  /** Of all pages together. */
  readonly count: number
  readonly value: Money
  readonly page: number
  readonly pages: number
}

export const TUBES_PER_PAGE = 100

export async function listTubes({
  search = '',
  family,
  view = 'in-stock',
  page = 1,
  now,
}: StockQuery): Promise<StockPage> {
  const words = fold(search).split(' ').filter(Boolean)
  const where: Prisma.TubeWhereInput = {
    ...(family === undefined ? {} : { family }),
    AND: [viewed(view, now), ...words.map((word) => ({ search: { contains: word } }))],
  }
  const { _count, _sum } = await db().tube.aggregate({ where, _count: true, _sum: { price: true } })
  const pages = Math.max(1, Math.ceil(_count / TUBES_PER_PAGE))
  const shown = Math.min(Math.max(1, page), pages)
  const window = { skip: (shown - 1) * TUBES_PER_PAGE, take: TUBES_PER_PAGE }
  const orderBy: Prisma.TubeOrderByWithRelationInput[] = [{ family: 'asc' }, { mark: 'asc' }]
  const tubes = await tubesOf(db(), await db().tube.findMany({ where, orderBy, ...window, select: tubeColumns }))
  const ofThese = { tubeId: { in: tubes.map(({ id }) => id) } }
  const tests = await db().tubeTest.findMany({ where: ofThese, orderBy: TEST_ORDER, select: testColumns })
  return { tubes: withTests(tubes, tests), count: _count, value: money(_sum.price ?? 0), page: shown, pages }
}

const held = (now: Date): Prisma.TubeWhereInput => ({
  hold: { not: '' },
  OR: [{ heldUntil: null }, { heldUntil: { gte: now } }],
})

/** The same rule as `activeHold`: a hold whose last instant has passed counts as free. */
const free = (now: Date): Prisma.TubeWhereInput => ({ OR: [{ hold: '' }, { heldUntil: { lt: now } }] })

function viewed(view: StockView, now: Date): Prisma.TubeWhereInput {
  const inStock = { whereabouts: 'in-stock' }
  switch (view) {
    case 'in-stock':
      return inStock
    case 'free':
      return { AND: [inStock, free(now)] }
    case 'held':
      return { AND: [inStock, held(now)] }
    case 'untested':
      return { AND: [inStock, { tests: { none: { plateAmps: { not: null }, shorts: false } } }] }
    case 'fitted':
      return { whereabouts: 'fitted' }
    case 'out':
      return { whereabouts: { in: ['sold', 'scrapped'] } }
    case 'all':
      return {}
  }
}

/** Newest first. */
export async function listTests(tubeId: string, tx: Tx = db()): Promise<readonly TubeTest[]> {
  const rows = await tx.tubeTest.findMany({ where: { tubeId }, orderBy: TEST_ORDER, select: testColumns })
  return testsByTube(rows).get(tubeId) ?? []
}

/** Newest first. */
export async function listFittingsOf(tubeId: string, tx: Tx = db()): Promise<TubeFitting[]> {
  const rows = await tx.fitting.findMany({
    where: { tubeId },
    orderBy: { fittedAt: 'desc' },
    select: {
      id: true,
      jobId: true,
      fittedAt: true,
      fittedBy: true,
      removedAt: true,
      hours: true,
      job: { select: { number: true } },
      socket: { select: { position: true, amp: { select: { id: true, make: true, model: true } } } },
    },
  })
  return rows.map(({ job, socket, ...rest }) => ({
    ...rest,
    jobNumber: job.number,
    ampId: socket.amp.id,
    ampName: `${socket.amp.make} ${socket.amp.model}`,
    position: socket.position,
  }))
}

export function searchOf(details: TubeDetails, family: string, further: TubeFurther): string {
  const { mark, designation, condition, acquired, construction, location } = details
  const words = fold(mark, mark.replaceAll('-', ''), designation, family, conditionWord(condition), location)
  return `${words} ${fold(acquired, construction, ...furtherTexts(further))}`.trim()
}

async function columnsOf(tx: Tx, details: TubeDetails, family: string, further: TubeFurther) {
  const { setName, ...columns } = further
  const search = searchOf(details, family, further)
  return { ...detailsOf(details), ...columns, setId: await setIdOf(tx, setName), family, search }
}

/** `mark` must be free: `findTubeByMark` in the same transaction tells. */
export async function createTube(
  tx: Tx,
  details: TubeDetails,
  family: string,
  further: TubeFurther = NOTHING_FURTHER,
): Promise<string> {
  const data = { ...(await columnsOf(tx, details, family, further)), whereabouts: 'in-stock' }
  const row = await tx.tube.create({ data, select: { id: true } })
  return row.id
}

/** False when somebody saved since `version`. */
export async function saveTube(
  tx: Tx,
  { id, version, further }: Pick<Tube, 'id' | 'version' | 'further'>,
  details: TubeDetails,
  family: string,
): Promise<boolean> {
  const { count } = await tx.tube.updateMany({
    where: { id, version },
    data: { ...(await columnsOf(tx, details, family, further)), version: version + 1 },
  })
  return count === 1
}

export type NewTest = TubeTestFacts & {
  readonly testedAt: Date
  readonly testedBy: string
  readonly calibratedOn: Day | null
  /** The test sheet it is a line of. */
  readonly sheetId?: string
}

/**
 * Two tests of a tube never share an instant, because the instant is what holds the rows of a
 * twin together: the second one entered for the same day follows a millisecond later.
 */
export async function addTest(tx: Tx, tubeId: string, test: NewTest): Promise<void> {
  const { plateVoltage, screenVoltage, gridVoltage, sections, testedAt, ...rest } = test
  const soon = new Date(testedAt.getTime() + 1000)
  const where = { tubeId, testedAt: { gte: testedAt, lt: soon } }
  const last = await tx.tubeTest.findFirst({ where, orderBy: { testedAt: 'desc' }, select: { testedAt: true } })
  const common = {
    ...rest,
    tubeId,
    testedAt: last ? new Date(last.testedAt.getTime() + 1) : testedAt,
    plateVolts: plateVoltage,
    screenVolts: screenVoltage,
    gridVolts: gridVoltage,
  }
  const read = sections.length > 0 ? sections : [UNREAD_SECTION]
  await tx.tubeTest.createMany({
    data: read.map(({ section, plateCurrent, screenCurrent, transconductance }) => ({
      ...common,
      section,
      plateAmps: plateCurrent,
      screenAmps: screenCurrent,
      gmSiemens: transconductance,
    })),
  })
}

const UNREAD_SECTION = { section: 1, plateCurrent: null, screenCurrent: null, transconductance: null } as const

/** After a test. Gives the version of the tube after it. */
export async function saveCondition(tx: Tx, tube: Tube, condition: TubeCondition): Promise<number> {
  const search = searchOf({ ...detailsOf(tube), condition }, tube.family, tube.further)
  const data = { condition, search, version: { increment: 1 } }
  const { version } = await tx.tube.update({ where: { id: tube.id }, data, select: { version: true } })
  return version
}

/** A whole tube counts as its details too: only these are columns of a sheet. */
function detailsOf(details: TubeDetails): TubeDetails {
  const { mark, designation, condition, acquired, construction, location, cost, price } = details
  return { mark, designation, condition, acquired, construction, location, cost, price }
}

/** In or out of stock by hand. False when it was saved, moved or held meanwhile. */
export async function saveWhereabouts(
  tx: Tx,
  tube: Pick<Tube, 'id' | 'version' | 'whereabouts'>,
  to: Exclude<Whereabouts, 'fitted'>,
  now: Date,
): Promise<boolean> {
  const { id, version, whereabouts } = tube
  const { count } = await tx.tube.updateMany({
    where: { id, version, whereabouts, ...free(now) },
    data: { ...NO_HOLD, whereabouts: to, version: version + 1 },
  })
  return count === 1
}

const NO_HOLD = { hold: '', heldForJob: null, heldByQuoteId: null, heldUntil: null } as const

export type NewHold = {
  readonly hold: Exclude<TubeHold, ''>
  readonly jobId: string
  readonly quoteId: string
  /** Last instant it counts. Null: no end. */
  readonly until: Date | null
  readonly now: Date
}

/**
 * All of these tubes for one job, or none: false when any is no longer in stock, or is held for
 * another job. What the same job holds already passes to this quote.
 */
export async function setHold(
  tx: Tx,
  tubeIds: readonly string[],
  { hold, jobId, quoteId, until, now }: NewHold,
): Promise<boolean> {
  const ids = [...new Set(tubeIds)]
  const { count } = await tx.tube.updateMany({
    where: { id: { in: ids }, whereabouts: 'in-stock', OR: [free(now), { heldForJob: jobId }] },
    data: { hold, heldForJob: jobId, heldByQuoteId: quoteId, heldUntil: until },
  })
  return count === ids.length
}

/** How many were let go. */
export async function releaseHold(tx: Tx, quoteId: string): Promise<number> {
  const { count } = await tx.tube.updateMany({ where: { heldByQuoteId: quoteId }, data: NO_HOLD })
  return count
}

/** One alone. False when this quote did not hold it. */
export async function releaseTube(tx: Tx, id: string, quoteId: string): Promise<boolean> {
  const { count } = await tx.tube.updateMany({ where: { id, heldByQuoteId: quoteId }, data: NO_HOLD })
  return count === 1
}

/** When a job ends without its tubes. */
export async function releaseHoldsOfJob(tx: Tx, jobId: string): Promise<number> {
  const { count } = await tx.tube.updateMany({ where: { heldForJob: jobId }, data: NO_HOLD })
  return count
}

export type NewFitting = {
  readonly tubeId: string
  readonly socketId: string
  readonly jobId: string
  /** As it is told for ever: "6L6GC, mark T-0147". */
  readonly text: string
  readonly fittedAt: Date
  readonly fittedBy: string
}

/**
 * Out of stock and into the socket; whatever this socket held before counts as taken out. False
 * when the tube is not in stock any more, or is held for another job.
 */
export async function markFitted(tx: Tx, fitting: NewFitting): Promise<boolean> {
  const { tubeId, socketId, jobId, fittedAt } = fitting
  const { count } = await tx.tube.updateMany({
    where: { id: tubeId, whereabouts: 'in-stock', OR: [free(fittedAt), { heldForJob: jobId }] },
    data: { ...NO_HOLD, whereabouts: 'fitted' },
  })
  if (count !== 1) return false
  await tx.fitting.updateMany({ where: { socketId, removedAt: null }, data: { removedAt: fittedAt } })
  await tx.fitting.create({ data: fitting })
  return true
}

/** In the order of the marks asked for; a mark that is not there is left out. */
export async function listTubesByMark(marks: readonly string[]): Promise<StockedTube[]> {
  const stocked = await listStocked(db(), { mark: { in: [...marks] } })
  const byMark = new Map(stocked.map((each) => [each.tube.mark, each]))
  return marks.flatMap((mark) => byMark.get(mark) ?? [])
}

export type TubeTests = {
  readonly id: string
  readonly mark: string
  readonly designation: string
  readonly tests: readonly TubeTest[]
}

/** Tubes the shop keeps to compare instruments by, wherever they are, with all their tests, newest first. */
export async function listReferenceTubes(client: Tx = db()): Promise<TubeTests[]> {
  const rows = await client.tube.findMany({
    where: { reference: true },
    orderBy: { mark: 'asc' },
    select: { id: true, mark: true, designation: true },
  })
  const where = { tubeId: { in: rows.map(({ id }) => id) } }
  const tests = testsByTube(await client.tubeTest.findMany({ where, orderBy: TEST_ORDER, select: testColumns }))
  return rows.map((row) => ({ ...row, tests: tests.get(row.id) ?? [] }))
}
