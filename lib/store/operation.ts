/** The shop's list of usual operations: by the hour or at a flat price. */
import { type Money, money } from '@/lib/domain/money'
import { db, type Tx } from './database'

export type Operation = {
  readonly id: string
  readonly name: string
  /** Hours times 1000; null for a flat price. */
  readonly milliHours: number | null
  readonly flatPrice: Money | null
  readonly active: boolean
  readonly place: number
}

export type OperationDetails = Omit<Operation, 'id'>

export async function listOperations(all = false, tx: Tx = db()): Promise<Operation[]> {
  const rows = await tx.operation.findMany({
    where: all ? {} : { active: true },
    orderBy: [{ place: 'asc' }, { name: 'asc' }],
  })
  return rows.map((row) => ({ ...row, flatPrice: row.flatPrice === null ? null : money(row.flatPrice) }))
}

export async function createOperation(tx: Tx, details: OperationDetails): Promise<string> {
  const row = await tx.operation.create({ data: details, select: { id: true } })
  return row.id
}

export async function updateOperation(tx: Tx, id: string, details: OperationDetails): Promise<void> {
  await tx.operation.update({ where: { id }, data: details })
}
