/** Running numbers without gaps or doubles: taken inside the transaction that uses them. */
import type { Tx } from './database'

export async function nextNumber(tx: Tx, name: 'job' | 'quote' | 'tube', first: number): Promise<number> {
  const counter = await tx.counter.upsert({
    where: { name },
    create: { name, next: first + 1 },
    update: { next: { increment: 1 } },
  })
  return counter.next - 1
}
