/** Who, when, what changed. Written in the same transaction as the change itself. */
import type { Change } from '@/lib/domain/history/changes'
import { db, type Tx } from './database'

export type HistorySubject =
  | 'shop'
  | 'person'
  | 'customer'
  | 'amp'
  | 'job'
  | 'readings'
  | 'quote'
  | 'safety'
  | 'tube'
  | 'instrument'
  | 'operation'
  | 'type'
  | 'maker'
  | 'lot'
  | 'import'
  | 'labels'
  | 'part'

export type HistoryNote = {
  readonly at: Date
  readonly person: string
  readonly subject: HistorySubject
  readonly subjectId: string
  readonly jobId?: string
  readonly did: string
  readonly changes?: readonly Change[]
  /** Version of the subject after this save. */
  readonly version?: number
}

export type HistoryEntry = {
  readonly id: string
  readonly at: Date
  readonly person: string
  readonly did: string
  readonly changes: readonly Change[]
}

const shownColumns = { id: true, at: true, person: true, did: true, changes: true } as const

type Row = { id: string; at: Date; person: string; did: string; changes: unknown }

// The column is Json; only writeHistory writes it, with this very shape.
const entry = (row: Row): HistoryEntry => ({ ...row, changes: row.changes as readonly Change[] })

export async function writeHistory(tx: Tx, note: HistoryNote): Promise<void> {
  const { changes = [], jobId = null, version = null, ...rest } = note
  await tx.historyEntry.create({ data: { ...rest, jobId, version, changes: changes.map((change) => ({ ...change })) } })
}

/** Newest first. */
export async function listJobHistory(jobId: string): Promise<HistoryEntry[]> {
  const rows = await db().historyEntry.findMany({
    where: { jobId },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    select: shownColumns,
  })
  return rows.map(entry)
}

/** Newest first. */
export async function listHistoryOf(subject: HistorySubject, subjectId: string): Promise<HistoryEntry[]> {
  const where = { subject, subjectId }
  const rows = await db().historyEntry.findMany({
    where,
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    take: 200,
    select: shownColumns,
  })
  return rows.map(entry)
}

/** Saves of a sheet after the version a form started from, oldest first. */
export async function listSavesAfter(
  tx: Tx,
  subject: HistorySubject,
  subjectId: string,
  version: number,
): Promise<HistoryEntry[]> {
  const where = { subject, subjectId, version: { gt: version } }
  const rows = await tx.historyEntry.findMany({ where, orderBy: { version: 'asc' }, select: shownColumns })
  return rows.map(entry)
}
