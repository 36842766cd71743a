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
}

const columns = { id: true, jobId: true, kind: true, number: true, issuedAt: true, issuedBy: true } as const

export async function createPaper(tx: Tx, paper: Omit<IssuedPaper, 'id'> & { readonly view: object }): Promise<string> {
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
