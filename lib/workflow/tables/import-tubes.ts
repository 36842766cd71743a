/**
 * Takes a file of tubes into stock. The file is chosen, looked at with its
 * columns mapped, then taken in: every row is read first, and with “all or
 * nothing” one bad row keeps all of them out. What is good is written in pieces
 * (write-import.ts); cancelled midway, what was written is taken back. A whole
 * import can be undone later, except for tubes that something was done with since.
 *
 * When the server is stopped in the middle, the import stays “running” without
 * a progress (import-standing.ts). What is written of it can then be undone, or the
 * rest taken in by `continueImport`: the file is read anew, and a row that is in stock is
 * known by its id.
 */
import { fail, ok, type Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { strippedFileName } from '@/lib/domain/stock/photo'
import { faultTable, type RefusedRow } from '@/lib/exchange/fault-table'
import { readTable, type Table } from '@/lib/exchange/read-table'
import { type ColumnMapping, headingsKey } from '@/lib/exchange/tube-columns'
import { inTransaction } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import {
  countImported,
  createImport,
  findImport,
  type Import,
  type ImportState,
  moveImport,
  readImportFile,
  rememberMapping,
  removeImportFile,
  writeImportFile,
} from '@/lib/store/import'
import { allowed, refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { shopOf } from '@/lib/workflow/stock/add-tube-test'
import { checkTable, rowReading } from './check-import'
import { askToStop, endProgress, importProgress, noteProgress } from './import-progress'
import { takeBackAll } from './undo-import'
import { type Written, writeImport } from './write-import'

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

type Begun = Result<{ readonly finished: Promise<Import> }, StepFault>

/**
 * Begins, and goes on by itself: `finished` settles when all of it is done. The step's own answer
 * says only that it has begun.
 */
export const startImport = (step: Step, order: ImportOrder): Promise<Begun> =>
  begin(step, order, ['chosen', 'cancelled', 'failed'])

/** Takes in the rest of an import that was cut short, in the way it was begun. */
export async function continueImport(step: Step, id: string): Promise<Begun> {
  const found = await findImport(id)
  if (found?.state !== 'running' || !found.order)
    return fail({ code: 'not-found', what: 'An import that was cut short' })
  const mapping = found.order.mapping as ColumnMapping
  return begin(step, { id, mapping, allOrNothing: found.order.allOrNothing }, ['running'])
}

async function begin(step: Step, order: ImportOrder, from: readonly ImportState[]): Promise<Begun> {
  const { id } = order
  const table = await chosenTable(id)
  if (!table) return fail({ code: 'not-found', what: 'The file of this import' })
  const under = importProgress(id)
  if (under) return fail({ code: 'import-under-way', fileName: (await findImport(id))?.fileName ?? 'This import' })
  // Said at once: from here on nobody else can begin, continue or undo it.
  noteProgress(id, { phase: 'reading', done: 0, total: table.rows.length })
  const begun = await ready(step, { order, table, from }).catch((error: unknown) => {
    endProgress(id)
    throw error
  })
  if (!begun.ok) {
    endProgress(id)
    return begun
  }
  const finished = run({ step, order, table, shop: begun.value })
  // What broke it off was told; without this an answer that nobody waits for would end the server.
  finished.catch(() => undefined)
  return ok({ finished })
}

type Readying = { readonly order: ImportOrder; readonly table: Table; readonly from: readonly ImportState[] }

function ready(step: Step, { order, table, from }: Readying): Promise<Result<Shop, StepFault>> {
  const { id, ...kept } = order
  return refusing(() =>
    inTransaction(async (tx) => {
      const duty = allowed(step, 'counter-work')
      if (!duty.ok) return refuse(duty.fault)
      if (!(await moveImport(tx, id, from, { state: 'running', order: kept })))
        return refuse({ code: 'not-found', what: 'A file waiting to be taken in' })
      await rememberMapping(tx, headingsKey(table.headings), kept.mapping)
      return shopOf(tx)
    }),
  )
}

type Run = { readonly step: Step; readonly order: ImportOrder; readonly table: Table; readonly shop: Shop }

async function run(work: Run): Promise<Import> {
  const { id } = work.order
  try {
    await settle(work, await takeAll(work))
  } catch (error) {
    console.error('An import broke off', error)
    await takeBackAll(id)
    const taken = await countImported(id)
    await inTransaction((tx) => moveImport(tx, id, ['running'], { state: 'failed', taken }))
  } finally {
    endProgress(id)
  }
  const done = await findImport(id)
  if (!done) throw new Error(`Import ${id} is gone`)
  return done
}

async function takeAll({ step, order, table, shop }: Run): Promise<Written> {
  const { id, mapping, allOrNothing } = order
  const checked = await checkTable(id, table, rowReading(mapping, shop, step.now))
  const isBarred = allOrNothing && checked !== null && checked.refused.length > 0
  if (checked !== null && !isBarred) return writeImport({ step, shop, id, allOrNothing }, checked)
  // Of one that goes on, earlier rows are in stock.
  await takeBackAll(id)
  return { state: checked === null ? 'cancelled' : 'done', refused: checked?.refused ?? [] }
}

async function settle({ step, order, table }: Run, { state, refused }: Written): Promise<void> {
  const { id } = order
  await keepFaults(id, table, refused)
  const taken = await countImported(id)
  await inTransaction(async (tx) => {
    const isBarred = state === 'done' && (taken === 0 || (order.allOrNothing && refused.length > 0))
    await moveImport(tx, id, ['running'], { state: isBarred ? 'failed' : state, taken, refused: refused.length })
    if (taken === 0) return
    const changes = [{ label: 'Taken into stock by a list', from: '', to: String(taken) }]
    const note = { at: step.now, person: step.actor.name, subject: 'import', subjectId: id } as const
    await writeHistory(tx, { ...note, did: 'Import', changes })
  })
}

async function keepFaults(id: string, table: Table, refused: readonly RefusedRow[]): Promise<void> {
  if (refused.length > 0) await writeImportFile(id, 'faults', faultTable(table.headings, refused))
  else await removeImportFile(id, 'faults')
}

/** The next part is not begun, and what was written is taken back. */
export const cancelImport = (id: string): void => askToStop(id)
