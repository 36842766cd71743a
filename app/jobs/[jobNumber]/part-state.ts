import 'server-only'
/** The drawers as they stand for one job's quote. */
import type { Quote } from '@/lib/domain/quote/quote'
import { leftOver, type PartLeftOver, type PartStanding, partStandings } from '@/lib/domain/stock/part-standing'
import { listDrawnBy, listStockedParts } from '@/lib/store/part-draw'

export type PartState = {
  readonly standings: ReadonlyMap<string, PartStanding>
  /** Taken, and on no ticked line. */
  readonly leftOver: readonly PartLeftOver[]
}

export async function partState(jobId: string, quote: Quote | null): Promise<PartState> {
  const [parts, drawn] = await Promise.all([listStockedParts(), listDrawnBy(jobId)])
  const lines = quote?.lines ?? []
  const job = { jobId, drawn }
  return { standings: partStandings(lines, parts, job), leftOver: leftOver(lines, parts, job) }
}
