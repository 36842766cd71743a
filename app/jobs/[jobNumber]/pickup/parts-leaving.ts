import 'server-only'
/** Parts of the drawers that leave with the amplifier, in words. */
import type { Quote } from '@/lib/domain/quote/quote'
import { piecesByPart } from '@/lib/domain/stock/drawer'
import { partName } from '@/lib/domain/stock/part'
import { listDrawnBy, listStockedParts } from '@/lib/store/part-draw'

export type PartsLeaving = {
  /** Out of their drawers: "2 × Screen resistor, 470 Ω 5 W". Empty: none. */
  readonly taken: string
  /** On the quote and not taken yet. */
  readonly unticked: string
}

export async function partsLeaving(jobId: string, quote: Quote | null): Promise<PartsLeaving> {
  const [parts, drawn] = await Promise.all([listStockedParts(), listDrawnBy(jobId)])
  const needed = piecesByPart(quote?.lines ?? [])
  const said = (piecesOf: (partId: string) => number) =>
    parts.flatMap((part) => (piecesOf(part.id) > 0 ? [`${piecesOf(part.id)} × ${partName(part)}`] : [])).join('; ')
  return {
    taken: said((id) => drawn.get(id) ?? 0),
    unticked: said((id) => (needed.get(id) ?? 0) - (drawn.get(id) ?? 0)),
  }
}
