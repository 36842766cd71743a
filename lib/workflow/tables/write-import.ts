/**
 * Writes the good rows of an import, two thousand at a time, each part one
 * transaction, so that the bench can go on working meanwhile. Asked to stop, or all
 * or nothing with a row that came to grief meanwhile, it takes back what was written.
 */
import type { Shop } from '@/lib/domain/shop/shop'
import { stockType } from '@/lib/domain/stock/stock-type'
import { testedInstant } from '@/lib/domain/stock/test-entry'
import type { RefusedRow } from '@/lib/exchange/fault-table'
import type { ImportedTest } from '@/lib/exchange/read-tube-row'
import { inTransaction } from '@/lib/store/database'
import { takenMarks } from '@/lib/store/import'
import type { NewTest } from '@/lib/store/tube'
import { type BulkTube, insertTubes } from '@/lib/store/tube-bulk'
import type { Step } from '@/lib/workflow/step/step'
import type { CheckedTable, GoodRow } from './check-import'
import { marksFor } from './import-marks'
import { breathe, isToStop, noteProgress } from './import-progress'
import { takeBackAll } from './undo-import'

const ROWS_A_TURN = 2000

export type Writing = {
  readonly step: Step
  readonly shop: Shop
  readonly id: string
  readonly allOrNothing: boolean
}

/** `done`: through, though perhaps with all of them refused. */
export type Written = { readonly state: 'done' | 'cancelled'; readonly refused: readonly RefusedRow[] }

export async function writeImport(writing: Writing, { good, refused }: CheckedTable): Promise<Written> {
  const { id, allOrNothing } = writing
  const late: RefusedRow[] = []
  const inFile = new Set(good.map(({ tube }) => tube.details.mark))
  const facts = { testAt: testInstants(writing), familyOf: families(writing.shop), inFile }
  for (let from = 0; from < good.length; from += ROWS_A_TURN) {
    noteProgress(id, { phase: 'writing', done: from, total: good.length })
    await breathe()
    late.push(...(await writeTurn(writing, good.slice(from, from + ROWS_A_TURN), facts)))
    if (isToStop(id) || (allOrNothing && late.length > 0)) {
      await takeBackAll(id)
      return { state: isToStop(id) ? 'cancelled' : 'done', refused: [...refused, ...late] }
    }
  }
  return { state: 'done', refused: [...refused, ...late] }
}

type Facts = {
  readonly testAt: TestInstants
  readonly familyOf: (designation: string) => string
  /** Marks of the rows still to be written. */
  readonly inFile: ReadonlySet<string>
}

/** A mark that somebody has given meanwhile is a fault of its row. */
function writeTurn(
  { step, id }: Writing,
  rows: readonly GoodRow[],
  { testAt, familyOf, inFile }: Facts,
): Promise<readonly RefusedRow[]> {
  return inTransaction(async (tx) => {
    const taken = await takenMarks(tx, rows.map(({ tube }) => tube.details.mark).filter(Boolean))
    const free = rows.filter(({ tube }) => !taken.has(tube.details.mark))
    const own = free.map(({ tube }) => tube.details.mark)
    const marks = await marksFor(tx, own, inFile)
    const tubes = free.map(({ row, tube }, place): BulkTube => {
      const details = { ...tube.details, mark: marks[place] as string }
      const family = familyOf(details.designation)
      return { ...tube, details, family, row: row.number, test: tube.test && newTest(tube.test, step, testAt) }
    })
    await insertTubes(tx, tubes, { importId: id, createdAt: step.now })
    return rows.filter(({ tube }) => taken.has(tube.details.mark)).map(({ row, tube }) => clash(row, tube.details.mark))
  })
}

const clash = (row: RefusedRow['row'], mark: string): RefusedRow => ({
  row,
  faults: [{ column: 'mark', sentence: `Mark: ${mark} was given to another one meanwhile. Give this one another.` }],
})

type TestInstants = (test: ImportedTest) => Date

/** Of one day all tests are of one instant; finding it asks the time zone several times over. */
function testInstants({ step, shop }: Writing): TestInstants {
  const known = new Map<string, Date>()
  return ({ day }) => {
    const instant = known.get(day) ?? testedInstant(day, step.now, shop.timeZone)
    known.set(day, instant)
    return instant
  }
}

function newTest(test: ImportedTest, { actor }: Step, testAt: TestInstants): NewTest {
  const { day: _day, testedBy, ...facts } = test
  return { ...facts, testedAt: testAt(test), testedBy: testedBy || actor.name }
}

/** Families of a shop's types, each looked up once. */
function families(shop: Shop): (designation: string) => string {
  const known = new Map<string, string>()
  return (designation) => {
    const family = known.get(designation) ?? stockType(designation, shop).family
    known.set(designation, family)
    return family
  }
}
