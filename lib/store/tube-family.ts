/** Which family the tubes of one designation are kept under. */
import { fold } from '@/lib/domain/fold'
import { db, type Tx } from './database'

export type StockedDesignation = { readonly designation: string; readonly family: string }

/** Of every tube ever taken in, each once. */
export function listDesignationsInStock(tx: Tx = db()): Promise<StockedDesignation[]> {
  return tx.tube.findMany({ distinct: ['designation', 'family'], select: { designation: true, family: true } })
}

/** The new family is a word these tubes are found by from now on. */
export async function moveToFamily(
  tx: Tx,
  { designation, from, to }: { readonly designation: string; readonly from: string; readonly to: string },
): Promise<void> {
  const tubes = await tx.tube.findMany({ where: { designation, family: from }, select: { id: true, search: true } })
  for (const { id, search } of tubes) {
    await tx.tube.update({ where: { id }, data: { family: to, search: `${search} ${fold(to)}` } })
  }
}
