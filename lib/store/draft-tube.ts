/** Which tubes stand on a draft quote of an open job: spoken for, though nothing holds them yet. */
import { db, type Tx } from './database'

export type DraftedTube = { readonly tubeId: string; readonly jobId: string; readonly jobNumber: string }

export async function listDraftedTubes(tx: Tx = db()): Promise<DraftedTube[]> {
  const rows = await tx.quoteLine.findMany({
    where: { tubeId: { not: null }, quote: { state: 'draft' } },
    select: { tubeId: true, quote: { select: { job: { select: { id: true, number: true } } } } },
  })
  return rows.flatMap(({ tubeId, quote: { job } }) =>
    tubeId ? [{ tubeId, jobId: job.id, jobNumber: job.number }] : [],
  )
}
