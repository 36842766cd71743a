/** Items left with an amplifier, given back one by one. */
import type { Tx } from './database'

/** False when it is not on the list of this job any more. */
export async function saveItemReturned(tx: Tx, jobId: string, itemId: string, returned: boolean): Promise<boolean> {
  const { count } = await tx.jobItem.updateMany({ where: { id: itemId, jobId }, data: { returned } })
  return count === 1
}
