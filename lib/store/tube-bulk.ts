/**
 * Many tubes and their tests in one statement each. The client's own createMany
 * takes over a millisecond a row; one INSERT that takes its rows from a bound
 * JSON text a sixtieth of that (measured, tests/bench/import.bench.ts). It is
 * the one place that speaks SQLite's own words: another provider writes
 * json_each and json_extract differently.
 *
 * Ids grow with the row, so that every index is written at its end.
 */
import type { SectionReading, TubeDetails } from '@/lib/domain/stock/tube'
import { SEEN_NAMES, type TubeFurther } from '@/lib/domain/stock/tube-further'
import type { Tx } from './database'
import { type NewTest, searchOf } from './tube'
import { setIdOf } from './tube-set'

export type BulkTube = {
  readonly details: TubeDetails
  readonly further: TubeFurther
  readonly family: string
  readonly whereabouts: string
  readonly test: NewTest | null
  /** Number of its row in the file. */
  readonly row: number
}

export type BulkPlace = { readonly importId: string; readonly createdAt: Date }

type Cell = string | number | boolean | Date | null
type Column<Row> = readonly [name: string, cell: (row: Row) => Cell, always?: 'always']

export async function insertTubes(tx: Tx, tubes: readonly BulkTube[], place: BulkPlace): Promise<void> {
  const sets = await setIds(tx, tubes)
  const placed = tubes.map((tube) => ({ id: importedId(place.importId, tube.row), tube }))
  const tests = placed.flatMap(({ id, tube: { test } }) => (test ? sectionsOf(id, test) : []))
  await insertAll(tx, 'Tube', tubeColumns(place, sets), placed)
  await insertAll(tx, 'TubeTest', TEST_COLUMNS, tests)
}

/** Of one row of one import always the same, so that no row can come in twice. */
export const importedId = (importId: string, row: number): string => `${importId}-${row.toString(36).padStart(5, '0')}`

async function setIds(tx: Tx, tubes: readonly BulkTube[]): Promise<ReadonlyMap<string, string | null>> {
  const ids = new Map<string, string | null>()
  for (const { further } of tubes)
    if (!ids.has(further.setName)) ids.set(further.setName, await setIdOf(tx, further.setName))
  return ids
}

type PlacedTube = { readonly id: string; readonly tube: BulkTube }

const DETAILS = ['mark', 'designation', 'condition', 'acquired', 'construction', 'location', 'cost'] as const
const FURTHER = ['used', 'cosmetics', 'box', 'warranty', 'warrantyUntil', 'hoursBefore', 'reference'] as const

function tubeColumns(
  { importId, createdAt }: BulkPlace,
  sets: ReadonlyMap<string, string | null>,
): readonly Column<PlacedTube>[] {
  return [
    ['id', ({ id }) => id],
    ...DETAILS.map((name): Column<PlacedTube> => [name, ({ tube }) => tube.details[name]]),
    ['price', ({ tube }) => tube.details.price, 'always'],
    ...[...FURTHER, ...SEEN_NAMES].map((name): Column<PlacedTube> => [name, ({ tube }) => tube.further[name]]),
    ['family', ({ tube }) => tube.family],
    ['whereabouts', ({ tube }) => tube.whereabouts],
    ['setId', ({ tube }) => sets.get(tube.further.setName) ?? null],
    ['search', ({ tube }) => searchOf(tube.details, tube.family, tube.further)],
    ['importId', () => importId],
    ['createdAt', () => createdAt],
  ]
}

type PlacedSection = {
  readonly id: string
  readonly tubeId: string
  readonly test: NewTest
  readonly read: SectionReading
}

const UNREAD: SectionReading = { section: 1, plateCurrent: null, screenCurrent: null, transconductance: null }

const sectionsOf = (tubeId: string, test: NewTest): PlacedSection[] =>
  (test.sections.length > 0 ? test.sections : [UNREAD]).map((read) => ({
    id: `${tubeId}-${read.section}`,
    tubeId,
    test,
    read,
  }))

const TEST_TEXTS = ['leakage', 'gas', 'noise', 'note', 'calibratedOn', 'shorts'] as const

const TEST_COLUMNS: readonly Column<PlacedSection>[] = [
  ['id', ({ id }) => id],
  ['tubeId', ({ tubeId }) => tubeId],
  ['testedAt', ({ test }) => test.testedAt],
  ['testedBy', ({ test }) => test.testedBy, 'always'],
  ['instrumentName', ({ test }) => test.instrumentName, 'always'],
  ...TEST_TEXTS.map((name): Column<PlacedSection> => [name, ({ test }) => test[name]]),
  // Empty is not its default.
  ['microphony', ({ test }) => test.microphony, 'always'],
  ['plateVolts', ({ test }) => test.plateVoltage],
  ['screenVolts', ({ test }) => test.screenVoltage],
  ['gridVolts', ({ test }) => test.gridVoltage],
  ['section', ({ read }) => read.section],
  ['plateAmps', ({ read }) => read.plateCurrent],
  ['screenAmps', ({ read }) => read.screenCurrent],
  ['gmSiemens', ({ read }) => read.transconductance],
]

/** A column that is empty in all of them is left to its own default. Names are this file's own, values are bound. */
async function insertAll<Row>(
  tx: Tx,
  table: string,
  columns: readonly Column<Row>[],
  rows: readonly Row[],
): Promise<void> {
  if (rows.length === 0) return
  const needed = columns.filter(([, cell, always]) => always || rows.some((row) => !isEmpty(cell(row))))
  const names = needed.map(([name]) => `"${name}"`).join(', ')
  const values = needed.map((_, place) => `json_extract(value, '$[${place}]')`).join(', ')
  const cells = rows.map((row) => needed.map(([, cell]) => cell(row)))
  await tx.$executeRawUnsafe(
    `INSERT INTO "${table}" (${names}) SELECT ${values} FROM json_each(?)`,
    JSON.stringify(cells),
  )
}

const isEmpty = (cell: Cell): boolean => cell === null || cell === '' || cell === false
