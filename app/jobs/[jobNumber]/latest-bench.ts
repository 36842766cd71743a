import 'server-only'
import type { AmpSheet } from '@/lib/domain/amp/amp'
import { type BenchResult, benchResult } from '@/lib/domain/bench/bench-result'
import type { ReadingSet } from '@/lib/domain/bench/reading-set'
import type { Job } from '@/lib/domain/job/job'
import type { Shop } from '@/lib/domain/shop/shop'
import { findAmpSheet } from '@/lib/store/amp'
import { listReadingSets } from '@/lib/store/reading-set'

export type LatestBench = {
  readonly sheet: AmpSheet
  readonly set: ReadingSet | null
  readonly result: BenchResult | null
}

/** The sheet with the newest round of either phase worked out. */
export async function latestBench(job: Job, shop: Shop): Promise<LatestBench> {
  const [sheet, [set = null]] = await Promise.all([findAmpSheet(job.ampId), listReadingSets(job.id)])
  if (!sheet) throw new Error(`Job ${job.number} has lost its amplifier`)
  return { sheet, set, result: set && benchResult(sheet, set, shop) }
}
