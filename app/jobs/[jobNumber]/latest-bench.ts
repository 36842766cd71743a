import 'server-only'
import type { AmpSheet } from '@/lib/domain/amp/amp'
import { sheetAsOf } from '@/lib/domain/amp/fitting'
import { type BenchResult, benchResult, stillThere } from '@/lib/domain/bench/bench-result'
import type { ReadingSet } from '@/lib/domain/bench/reading-set'
import type { Job } from '@/lib/domain/job/job'
import type { Shop } from '@/lib/domain/shop/shop'
import { findAmpSheet } from '@/lib/store/amp'
import { listFittingsOfAmp } from '@/lib/store/fitting'
import { listReadingSets } from '@/lib/store/reading-set'

export type LatestBench = {
  /** As it is now. */
  readonly sheet: AmpSheet
  readonly set: ReadingSet | null
  /** Judged with the tubes that sat there when it was read. */
  readonly result: BenchResult | null
  /** Of that, what still speaks of the tubes that sit there now. */
  readonly standing: BenchResult | null
}

/** The sheet with the newest round of either phase worked out. */
export async function latestBench(job: Job, shop: Shop): Promise<LatestBench> {
  const [sheet, [set = null], fittings] = await Promise.all([
    findAmpSheet(job.ampId),
    listReadingSets(job.id),
    listFittingsOfAmp(job.ampId),
  ])
  if (!sheet) throw new Error(`Job ${job.number} has lost its amplifier`)
  const result = set && benchResult(sheetAsOf(sheet, fittings, set.takenAt), set, shop)
  return { sheet, set, result, standing: result && stillThere(result, sheet) }
}
