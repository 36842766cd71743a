import 'server-only'
import { sheetAsOf } from '@/lib/domain/amp/fitting'
import { benchResult } from '@/lib/domain/bench/bench-result'
import type { ReadingSet } from '@/lib/domain/bench/reading-set'
import type { Shop } from '@/lib/domain/shop/shop'
import type { KnownAmp } from '@/lib/domain/substitution/socket-of-sheet'
import { findAmpSheet } from '@/lib/store/amp'
import { findSupply } from '@/lib/store/amp-supply'
import { listFittingsOfAmp } from '@/lib/store/fitting'
import { findLatestReadingsOfAmp } from '@/lib/store/reading-set'

/** An amplifier with all that is known of it, whatever job it was learnt in. Null: there is none of this id. */
export async function findKnownAmp(
  ampId: string,
  shop: Shop,
): Promise<(KnownAmp & { readonly set: ReadingSet | null }) | null> {
  const [sheet, supply, set, fittings] = await Promise.all([
    findAmpSheet(ampId),
    findSupply(ampId),
    findLatestReadingsOfAmp(ampId),
    listFittingsOfAmp(ampId),
  ])
  if (!sheet) return null
  const result = set && benchResult(sheetAsOf(sheet, fittings, set.takenAt), set, shop)
  return { sheet, supply, set, result, shop }
}
