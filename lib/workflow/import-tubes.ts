/**
 * Takes a file of tubes into stock. The file is chosen, looked at with its
 * columns mapped, then taken in: every row is read first, and with “all or
 * nothing” one bad row keeps all of them out. What is good is written two
 * thousand rows at a time, each part one transaction, so that the bench can go on
 * working meanwhile; cancelled midway, what was written is taken back. A whole
 * import can be undone later, except for tubes that something was done with since.
 *
 * When the server is stopped in the middle, the import stays “running” without
 * a progress: what is there of it can be undone as any other.
 */
import { fail, ok, type Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { strippedFileName } from '@/lib/domain/stock/photo'
import { stockType } from '@/lib/domain/stock/stock-type'
import { testedInstant } from '@/lib/domain/stock/test-entry'
import { faultTable, type RefusedRow } from '@/lib/exchange/fault-table'
import { readTable, type Table } from '@/lib/exchange/read-table'
import type { ImportedTest } from '@/lib/exchange/read-tube-row'
import { type ColumnMapping, headingsKey } from '@/lib/exchange/tube-columns'
import { inTransaction } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import {
  createImport,
  findImport,
  type Import,
  moveImport,
  readImportFile,
  rememberMapping,
  removeImportFile,
  takenMarks,
  writeImportFile,
} from '@/lib/store/import'
import type { NewTest } from '@/lib/store/tube'
import { type BulkTube, insertTubes } from '@/lib/store/tube-bulk'
import { shopOf } from './add-tube-test'
import { type CheckedTable, checkTable, type GoodRow, rowReading } from './check-import'
import { marksFor } from './import-marks'
import { askToStop, breathe, endProgress, isToStop, noteProgress } from './import-progress'
import { allowed, refuse, refusing, type Step } from './step'
import type { StepFault } from './step-fault'
import { takeBackAll } from './undo-import'

const ROWS_A_TURN = 2000

/** Gives the id under which the file lies ready; nothing is taken in yet. */
export async function chooseImport(
  step: Step,
  { fileName, bytes }: { readonly fileName: string; readonly bytes: Uint8Array },
): Promise<Result<string, StepFault>> {
  const read = readTable(bytes)
  if (!read.ok) return fail({ code: 'table-refused', fault: read.fault })
  const head = { fileName: strippedFileName(fileName), at: step.now, person: step.actor.name, state: 'chosen' } as const
  const id = await inTransaction((tx) => createImport(tx, { ...head, rows: read.value.rows.length }))
  await writeImportFile(id, 'table', bytes)
  return ok(id)
}

/** Null when the file is not at hand any more. */
export async function chosenTable(id: string): Promise<Table | null> {
  const bytes = await readImportFile(id, 'table')
  const read = bytes && readTable(bytes)
  return read?.ok ? read.value : null
}

export type ImportOrder = {
  readonly id: string
  readonly mapping: ColumnMapping
  /** One bad row keeps all of them out. */
  readonly allOrNothing: boolean
}

/**
 * Begins, and goes on by itself: `finished` settles when all of it is done. The step's own answer
 * says only that it has begun.
 */
export async function startImport(
  step: Step,
  order: ImportOrder,
): Promise<Result<{ readonly finished: Promise<Import> }, StepFault>> {
  const { id, mapping } = order
  const table = await chosenTable(id)
  if (!table) return fail({ code: 'not-found', what: 'The file of this import' })
  const begun = await refusing(() =>
    inTransaction(async (tx) => {
      const duty = allowed(step, 'counter-work')
      if (!duty.ok) return refuse(duty.fault)
      if (!(await moveImport(tx, id, ['chosen', 'cancelled', 'failed'], { state: 'running' })))
        return refuse({ code: 'not-found', what: 'A file waiting to be taken in' })
      await rememberMapping(tx, headingsKey(table.headings), mapping)
      return shopOf(tx)
    }),
  )
  if (!begun.ok) return begun
  noteProgress(id, { phase: 'reading', done: 0, total: table.rows.length })
  return ok({ finished: run({ step, order, table, shop: begun.value }) })
}

type Run = { readonly step: Step; readonly order: ImportOrder; readonly table: Table; readonly shop: Shop }

async function run(work: Run): Promise<Import> {
  const { id } = work.order
  try {
    await settle(work, await takeAll(work))
  } catch (error) {
    console.error('An import broke off', error)
    await takeBackAll(id)
    await inTransaction((tx) => moveImport(tx, id, ['running'], { state: 'failed', taken: 0 }))
  } finally {
    endProgress(id)
  }
  const done = await findImport(id)
  if (!done) throw new Error(`Import ${id} is gone`)
  return done
}

type Taken = { readonly state: 'done' | 'cancelled'; readonly taken: number; readonly refused: readonly RefusedRow[] }

async function takeAll({ step, order, table, shop }: Run): Promise<Taken> {
  const { id, mapping, allOrNothing } = order
  const checked = await checkTable(id, table, rowReading(mapping, shop, step.now))
  if (checked === null) return { state: 'cancelled', taken: 0, refused: [] }
  if (checked.refused.length > 0 && allOrNothing) return { state: 'done', taken: 0, refused: checked.refused }
  return writeAll({ step, shop, id, allOrNothing }, checked)
}

type Writing = { readonly step: Step; readonly shop: Shop; readonly id: string; readonly allOrNothing: boolean }

async function writeAll(writing: Writing, { good, refused }: CheckedTable): Promise<Taken> {
  const { id, allOrNothing } = writing
  const late: RefusedRow[] = []
  const facts = { testAt: testInstants(writing), familyOf: families(writing.shop) }
  let taken = 0
  for (let from = 0; from < good.length; from += ROWS_A_TURN) {
    noteProgress(id, { phase: 'writing', done: from, total: good.length })
    await breathe()
    const clash = await writeTurn(writing, good.slice(from, from + ROWS_A_TURN), { ...facts, first: from })
    taken += clash.written
    late.push(...clash.refused)
    if (isToStop(id) || (allOrNothing && late.length > 0)) {
      await takeBackAll(id)
      return { state: isToStop(id) ? 'cancelled' : 'done', taken: 0, refused: [...refused, ...late] }
    }
  }
  return { state: 'done', taken, refused: [...refused, ...late] }
}

type Turn = { readonly written: number; readonly refused: readonly RefusedRow[] }

type Facts = {
  readonly testAt: TestInstants
  readonly familyOf: (designation: string) => string
  readonly first: number
}

/** A mark that somebody has given meanwhile is a fault of its row. */
function writeTurn({ step, id }: Writing, rows: readonly GoodRow[], { testAt, familyOf, first }: Facts): Promise<Turn> {
  return inTransaction(async (tx) => {
    const taken = await takenMarks(tx, rows.map(({ tube }) => tube.details.mark).filter(Boolean))
    const free = rows.filter(({ tube }) => !taken.has(tube.details.mark))
    const marks = await marksFor(
      tx,
      free.map(({ tube }) => tube.details.mark),
    )
    const tubes = free.map(({ tube }, place): BulkTube => {
      const details = { ...tube.details, mark: marks[place] as string }
      const family = familyOf(details.designation)
      return { ...tube, details, family, test: tube.test && newTest(tube.test, step, testAt) }
    })
    await insertTubes(tx, tubes, { importId: id, first, createdAt: step.now })
    const refused = rows.filter((row) => !free.includes(row)).map(({ row, tube }) => clash(row, tube.details.mark))
    return { written: tubes.length, refused }
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

async function settle({ step, order, table }: Run, { state, taken, refused }: Taken): Promise<void> {
  const { id } = order
  if (refused.length > 0) await writeImportFile(id, 'faults', faultTable(table.headings, refused))
  else await removeImportFile(id, 'faults')
  await inTransaction(async (tx) => {
    await moveImport(tx, id, ['running'], {
      state: taken === 0 && state === 'done' ? 'failed' : state,
      taken,
      refused: refused.length,
    })
    if (taken === 0) return
    const changes = [{ label: 'Taken into stock by a list', from: '', to: String(taken) }]
    const note = { at: step.now, person: step.actor.name, subject: 'import', subjectId: id } as const
    await writeHistory(tx, { ...note, did: 'Import', changes })
  })
}

/** The next part is not begun, and what was written is taken back. */
export const cancelImport = (id: string): void => askToStop(id)
