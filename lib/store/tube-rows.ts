/** Rows of tubes and their tests as domain values. A twin's test is one row for each section. */
import type { Prisma } from '@/generated/sqlite/client'
import type { Day } from '@/lib/domain/calendar'
import { money } from '@/lib/domain/money'
import type { Tube, TubeCondition, TubeHold, TubeTest, Whereabouts } from '@/lib/domain/stock/tube'
import type { TubeFurther, UsedState, WarrantyState } from '@/lib/domain/stock/tube-further'
import { amps, siemens, volts } from '@/lib/domain/units'

const furtherColumns = {
  used: true,
  cosmetics: true,
  box: true,
  bulbShape: true,
  glass: true,
  plates: true,
  baseLook: true,
  printColour: true,
  getters: true,
  micas: true,
  codes: true,
  labelText: true,
  warranty: true,
  warrantyUntil: true,
  hoursBefore: true,
  reference: true,
  set: { select: { name: true } },
} satisfies Prisma.TubeSelect

type FurtherRow = Prisma.TubeGetPayload<{ select: typeof furtherColumns }>

export const tubeColumns = {
  ...furtherColumns,
  id: true,
  mark: true,
  designation: true,
  family: true,
  condition: true,
  acquired: true,
  construction: true,
  location: true,
  cost: true,
  price: true,
  whereabouts: true,
  hold: true,
  heldForJob: true,
  heldByQuoteId: true,
  heldUntil: true,
  version: true,
  createdAt: true,
} satisfies Prisma.TubeSelect

type TubeRow = Prisma.TubeGetPayload<{ select: typeof tubeColumns }>

function furtherOf({ set, used, warranty, warrantyUntil, ...rest }: FurtherRow): TubeFurther {
  return {
    ...rest,
    used: used as UsedState | '',
    warranty: warranty as WarrantyState | '',
    warrantyUntil: warrantyUntil as Day | null,
    setName: set?.name ?? '',
  }
}

export function tubeOf(row: TubeRow, jobNumbers: ReadonlyMap<string, string>): Tube {
  const { id, mark, designation, family, acquired, construction, location, version, createdAt } = row
  const { heldForJob, heldByQuoteId, heldUntil } = row
  const { used, cosmetics, box, bulbShape, glass, plates, baseLook, printColour, getters, micas, codes } = row
  const { labelText, warranty, warrantyUntil, hoursBefore, reference, set } = row
  const seen = { bulbShape, glass, plates, baseLook, printColour, getters, micas, codes, labelText }
  return {
    ...{ id, mark, designation, family, acquired, construction, location, version, createdAt },
    ...{ heldForJob, heldByQuoteId, heldUntil },
    further: furtherOf({ ...seen, used, cosmetics, box, warranty, warrantyUntil, hoursBefore, reference, set }),
    condition: row.condition as TubeCondition,
    whereabouts: row.whereabouts as Whereabouts,
    hold: row.hold as TubeHold,
    heldForJobNumber: row.heldForJob === null ? null : (jobNumbers.get(row.heldForJob) ?? null),
    cost: row.cost === null ? null : money(row.cost),
    price: money(row.price),
  }
}

export const testColumns = {
  id: true,
  tubeId: true,
  testedAt: true,
  testedBy: true,
  instrumentName: true,
  calibratedOn: true,
  plateVolts: true,
  screenVolts: true,
  gridVolts: true,
  section: true,
  plateAmps: true,
  screenAmps: true,
  gmSiemens: true,
  shorts: true,
  leakage: true,
  gas: true,
  noise: true,
  microphony: true,
  note: true,
} satisfies Prisma.TubeTestSelect

/** Newest first, and within one test section 1 first: what `testsByTube` expects. */
export const TEST_ORDER = [{ testedAt: 'desc' }, { section: 'asc' }] satisfies Prisma.TubeTestOrderByWithRelationInput[]

type TestRow = Prisma.TubeTestGetPayload<{ select: typeof testColumns }>

export type TestsByTube = ReadonlyMap<string, readonly TubeTest[]>

/** In the order of TEST_ORDER. */
export const testsByTube = (rows: readonly TestRow[]): TestsByTube =>
  new Map([...rowsByTest(rows)].map(([tubeId, tests]) => [tubeId, tests.map(testOf)]))

/** Rows of one tube at one instant are one test: `addTest` keeps the instants of a tube apart. */
export function rowsByTest<Row extends Pick<TestRow, 'tubeId' | 'testedAt'>>(
  rows: readonly Row[],
): ReadonlyMap<string, readonly (readonly Row[])[]> {
  const byTube = new Map<string, Row[][]>()
  for (const row of rows) {
    const tests = byTube.get(row.tubeId) ?? []
    const last = tests[tests.length - 1]
    if (last?.[0]?.testedAt.getTime() === row.testedAt.getTime()) last.push(row)
    else tests.push([row])
    byTube.set(row.tubeId, tests)
  }
  return byTube
}

/** null stays null. */
export const known = <T>(value: number | null, unit: (value: number) => T): T | null =>
  value === null ? null : unit(value)

function testOf(rows: readonly TestRow[]): TubeTest {
  const first = rows[0] as TestRow
  const { id, testedAt, testedBy, instrumentName, shorts, leakage, gas, noise, microphony, note } = first
  return {
    ...{ id, testedAt, testedBy, instrumentName, shorts, leakage, gas, noise, microphony, note },
    calibratedOn: first.calibratedOn as Day | null,
    plateVoltage: known(first.plateVolts, volts),
    screenVoltage: known(first.screenVolts, volts),
    gridVoltage: known(first.gridVolts, volts),
    sections: rows.map(({ section, plateAmps, screenAmps, gmSiemens }) => ({
      section: section === 2 ? 2 : 1,
      plateCurrent: known(plateAmps, amps),
      screenCurrent: known(screenAmps, amps),
      transconductance: known(gmSiemens, siemens),
    })),
  }
}
