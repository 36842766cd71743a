import { type Money, money } from '@/lib/domain/money'
import { db, type Tx } from './database'

export type FreeStock = {
  readonly designation: string
  readonly count: number
  /** Of the cheapest. */
  readonly from: Money
}

/** What is in stock and neither held nor rejected, counted as it is written on the tubes. */
export async function listFreeStock(now: Date, tx: Tx = db()): Promise<FreeStock[]> {
  const rows = await tx.tube.groupBy({
    by: ['designation'],
    where: {
      whereabouts: 'in-stock',
      condition: { not: 'reject' },
      reference: false,
      OR: [{ hold: '' }, { heldUntil: { lt: now } }],
    },
    _count: { _all: true },
    _min: { price: true },
  })
  return rows.map(({ designation, _count, _min }) => ({
    designation,
    count: _count._all,
    from: money(_min.price ?? 0),
  }))
}
