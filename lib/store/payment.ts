/**
 * Payments of a job, and what is charged for one that goes back unrepaired: that
 * charge stands beside the payments as a row of kind 'charge' and is none of them.
 */
import type { Prisma } from '@/generated/sqlite/client'
import type { Payment, PaymentKind } from '@/lib/domain/job/account'
import { type Money, money, sum } from '@/lib/domain/money'
import { db, type Tx } from './database'

const columns = {
  id: true,
  amount: true,
  kind: true,
  how: true,
  at: true,
  takenBy: true,
} satisfies Prisma.PaymentSelect

const CHARGE = 'charge'

/** Oldest first. */
export async function listPayments(jobId: string, tx: Tx = db()): Promise<Payment[]> {
  const rows = await tx.payment.findMany({
    where: { jobId, kind: { not: CHARGE } },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
    select: columns,
  })
  return rows.map((row) => ({ ...row, amount: money(row.amount), kind: row.kind as PaymentKind }))
}

export async function createPayment(tx: Tx, jobId: string, payment: Omit<Payment, 'id'>): Promise<void> {
  await tx.payment.create({ data: { ...payment, jobId } })
}

/** Null: none is set, so the accepted quote says what is owed. */
export async function findCharge(jobId: string, tx: Tx = db()): Promise<Money | null> {
  const rows = await tx.payment.findMany({ where: { jobId, kind: CHARGE }, select: { amount: true } })
  return rows.length === 0 ? null : sum(rows.map(({ amount }) => money(amount)))
}

export async function createCharge(
  tx: Tx,
  jobId: string,
  charge: Pick<Payment, 'amount' | 'at' | 'takenBy'>,
): Promise<void> {
  await tx.payment.create({ data: { ...charge, jobId, kind: CHARGE } })
}
