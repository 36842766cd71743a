/** Running numbers without gaps or doubles: taken inside the transaction that uses them. */
import type { Tx } from './database'

export const nextNumber = (tx: Tx, name: 'job' | 'quote' | 'tube', first: number): Promise<number> =>
  nextNumbers(tx, name, first, 1)

/** The first of `count` numbers in a row that are now used. */
export async function nextNumbers(
  tx: Tx,
  name: 'job' | 'quote' | 'tube',
  first: number,
  count: number,
): Promise<number> {
  const counter = await tx.counter.upsert({
    where: { name },
    create: { name, next: first + count },
    update: { next: { increment: count } },
  })
  return counter.next - count
}
