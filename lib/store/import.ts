/** Files taken in: the record of each, the file itself in the data folder while it is at hand, and its undoing. */
import { mkdir, readFile, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { dataFolder, db, type Tx } from './database'

/** How an import was begun; kept, so that one that was cut short can go on. */
export type KeptOrder = {
  /** What each column means; null: passed over. */
  readonly mapping: readonly (string | null)[]
  /** One bad row keeps all of them out. */
  readonly allOrNothing: boolean
}

export type ImportState = 'chosen' | 'running' | 'done' | 'cancelled' | 'failed' | 'undoing' | 'undone'

export type Import = {
  readonly id: string
  readonly fileName: string
  readonly at: Date
  readonly person: string
  readonly state: ImportState
  readonly rows: number
  readonly taken: number
  readonly refused: number
  readonly undoneAt: Date | null
  /** Null: not begun yet. */
  readonly order: KeptOrder | null
}

const columns = {
  id: true,
  fileName: true,
  at: true,
  person: true,
  state: true,
  rows: true,
  taken: true,
  refused: true,
  undoneAt: true,
  order: true,
} as const

type Row = Omit<Import, 'state' | 'order'> & { state: string; order: unknown }

const importOf = (row: Row): Import => ({
  ...row,
  state: row.state as ImportState,
  order: row.order as KeptOrder | null,
})

export async function createImport(
  tx: Tx,
  head: Omit<Import, 'id' | 'taken' | 'refused' | 'undoneAt' | 'order'>,
): Promise<string> {
  return (await tx.import.create({ data: { ...head, taken: 0, refused: 0 }, select: { id: true } })).id
}

export async function findImport(id: string, tx: Tx = db()): Promise<Import | null> {
  const row = await tx.import.findUnique({ where: { id }, select: columns })
  return row && importOf(row)
}

/** Neither chosen only nor over: under way, or cut short. */
export async function listOpenImports(): Promise<Import[]> {
  const where = { state: { in: ['running', 'undoing'] } }
  const rows = await db().import.findMany({ where, orderBy: { at: 'desc' }, select: columns })
  return rows.map(importOf)
}

/** Newest first. */
export async function listImports(limit = 20): Promise<Import[]> {
  const rows = await db().import.findMany({ orderBy: { at: 'desc' }, take: limit, select: columns })
  return rows.map(importOf)
}

/** False when it was in another state by now. */
export async function moveImport(
  tx: Tx,
  id: string,
  from: readonly ImportState[],
  {
    order,
    ...data
  }: Partial<Pick<Import, 'state' | 'taken' | 'refused' | 'undoneAt' | 'rows'>> & { order?: KeptOrder },
): Promise<boolean> {
  const kept = order && { order: { ...order, mapping: [...order.mapping] } }
  const moved = await tx.import.updateMany({ where: { id, state: { in: [...from] } }, data: { ...data, ...kept } })
  return moved.count === 1
}

export async function rememberMapping(tx: Tx, key: string, mapping: readonly (string | null)[]): Promise<void> {
  const data = { columns: [...mapping] }
  await tx.importMapping.upsert({ where: { key }, create: { key, ...data }, update: data })
}

export async function findMapping(key: string): Promise<readonly (string | null)[] | null> {
  const row = await db().importMapping.findUnique({ where: { key }, select: { columns: true } })
  return row && (row.columns as (string | null)[])
}

/** Those of these marks that stand on a tube. */
export async function takenMarks(tx: Tx, marks: readonly string[]): Promise<ReadonlySet<string>> {
  const rows = await tx.tube.findMany({ where: { mark: { in: [...marks] } }, select: { mark: true } })
  return new Set(rows.map(({ mark }) => mark))
}

export async function listAllMarks(): Promise<ReadonlySet<string>> {
  return new Set((await db().tube.findMany({ select: { mark: true } })).map(({ mark }) => mark))
}

export const countImported = (importId: string): Promise<number> => db().tube.count({ where: { importId } })

/** Ids of the tubes that are there of it. */
export async function listImportedIds(importId: string): Promise<ReadonlySet<string>> {
  return new Set((await db().tube.findMany({ where: { importId }, select: { id: true } })).map(({ id }) => id))
}

/** Tubes of the import that nothing was done with since: not corrected, moved, held, quoted, fitted or pictured. */
const untouched = (importId: string) => ({
  importId,
  version: 1,
  hold: '',
  quoteLines: { none: {} },
  fittings: { none: {} },
  photos: { none: {} },
})

export type UndoablePart = {
  readonly undoable: readonly string[]
  /** Where the next part goes on. Null: this was the last. */
  readonly last: string | null
}

/** A later test, correction or move leaves an entry in the history, and the import itself leaves none. */
export async function listUndoable(tx: Tx, importId: string, limit: number, after: string): Promise<UndoablePart> {
  const rows = await tx.tube.findMany({
    where: { ...untouched(importId), id: { gt: after } },
    orderBy: { id: 'asc' },
    take: limit,
    select: { id: true },
  })
  const ids = rows.map(({ id }) => id)
  const where = { subject: 'tube', subjectId: { in: ids } }
  const entries = await tx.historyEntry.findMany({ where, select: { subjectId: true } })
  const used = new Set(entries.map(({ subjectId }) => subjectId))
  return { undoable: ids.filter((id) => !used.has(id)), last: ids.at(-1) ?? null }
}

export async function deleteTubes(tx: Tx, ids: readonly string[]): Promise<number> {
  await tx.tubeTest.deleteMany({ where: { tubeId: { in: [...ids] } } })
  return (await tx.tube.deleteMany({ where: { id: { in: [...ids] } } })).count
}

/** Left of the import, with a few marks to name. */
export async function importRest(
  tx: Tx,
  importId: string,
): Promise<{ readonly count: number; readonly marks: string[] }> {
  const where = { importId }
  const count = await tx.tube.count({ where })
  const rows = await tx.tube.findMany({ where, orderBy: { mark: 'asc' }, take: 20, select: { mark: true } })
  return { count, marks: rows.map(({ mark }) => mark) }
}

const folder = () => join(/*turbopackIgnore: true*/ dataFolder(), 'imports')
const pathOf = (id: string, what: 'table' | 'faults') =>
  join(/*turbopackIgnore: true*/ folder(), `${id.replace(/[^a-z0-9]/gi, '')}-${what}.csv`)

export async function writeImportFile(
  id: string,
  what: 'table' | 'faults',
  content: Uint8Array | string,
): Promise<void> {
  await mkdir(folder(), { recursive: true })
  await writeFile(pathOf(id, what), content)
}

/** Null when it is not there any more. */
export async function readImportFile(id: string, what: 'table' | 'faults'): Promise<Uint8Array | null> {
  try {
    return new Uint8Array(await readFile(pathOf(id, what)))
  } catch (error) {
    if ((error as { code?: string }).code === 'ENOENT') return null
    throw error
  }
}

export const removeImportFile = (id: string, what: 'table' | 'faults'): Promise<void> =>
  rm(pathOf(id, what), { force: true })

export type CameBy = Pick<Import, 'id' | 'fileName' | 'at' | 'person'>

/** The list a tube came in by. Null: it came in by itself. */
export async function findImportOf(tubeId: string): Promise<CameBy | null> {
  const found = await db().tube.findUnique({
    where: { id: tubeId },
    select: { import: { select: { id: true, fileName: true, at: true, person: true } } },
  })
  return found?.import ?? null
}

/** Some marks of what is left of an import. */
export const listImportMarks = async (importId: string): Promise<string[]> => (await importRest(db(), importId)).marks
