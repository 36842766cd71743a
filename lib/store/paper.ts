/** Issued papers: the view as it was drawn, frozen. What a view holds is known to lib/documents alone. */
import type { Prisma } from '@/generated/sqlite/client'
import { db, type Tx } from './database'

export type IssuedPaper = {
  readonly id: string
  readonly jobId: string
  readonly kind: string
  readonly number: string
  readonly issuedAt: Date
  readonly issuedBy: string
  /** What it says did not happen after all: since when, and why. */
  readonly takenBackAt: Date | null
  readonly takenBackBecause: string
}

const columns = {
  ...{ id: true, jobId: true, kind: true, number: true, issuedAt: true, issuedBy: true },
  ...{ takenBackAt: true, takenBackBecause: true },
} as const

type NewPaper = Omit<IssuedPaper, 'id' | 'takenBackAt' | 'takenBackBecause'> & { readonly view: object }

export async function createPaper(tx: Tx, paper: NewPaper): Promise<string> {
  const data = { ...paper, view: paper.view as Prisma.InputJsonObject }
  const row = await tx.paper.create({ data, select: { id: true } })
  return row.id
}

/** Newest first. */
export async function listPapers(jobId: string, kind?: string): Promise<IssuedPaper[]> {
  const where = kind ? { jobId, kind } : { jobId }
  return db().paper.findMany({ where, orderBy: { issuedAt: 'desc' }, select: columns })
}

export async function findPaper(id: string, tx: Tx = db()): Promise<(IssuedPaper & { readonly view: unknown }) | null> {
  return tx.paper.findUnique({ where: { id }, select: { ...columns, view: true } })
}

/** Its view stays as it was drawn. */
export async function takeBackPapers(
  tx: Tx,
  papers: Pick<IssuedPaper, 'jobId' | 'kind'>,
  { at, because }: { readonly at: Date; readonly because: string },
): Promise<void> {
  const data = { takenBackAt: at, takenBackBecause: because }
  await tx.paper.updateMany({ where: { ...papers, takenBackAt: null }, data })
}
