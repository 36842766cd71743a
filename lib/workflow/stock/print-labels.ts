/** Labels of tubes as PDF, drawn from what is known of them now. */

import { renderLabels } from '@/lib/documents/labels'
import type { Shop } from '@/lib/domain/shop/shop'
import { type LabelSheet, labelsOnSheet } from '@/lib/domain/stock/label/label-sheet'
import { labelText } from '@/lib/domain/stock/label/label-text'
import type { StockedTube } from '@/lib/domain/stock/tube'
import { wordsFor } from '@/lib/domain/words'

export type LabelPrint = {
  readonly shop: Shop
  readonly sheet: LabelSheet
  /** Out of the sheet's places it is the first. */
  readonly start: number
  readonly tubes: readonly StockedTube[]
  /** Of this shop in the browser, without a slash at its end. */
  readonly address: string
  readonly now: Date
}

export function printLabels({ shop, sheet, start, tubes, address, now }: LabelPrint): Promise<Uint8Array> {
  const words = wordsFor(shop.words)
  const labels = tubes.map((tube) => ({
    ...labelText(tube, shop.timeZone, words),
    address: `${address}/stock/${tube.tube.id}`,
  }))
  const first = Math.min(Math.max(1, Math.trunc(start)), labelsOnSheet(sheet))
  return renderLabels({ sheet, start: first, labels, shopName: shop.name, language: words.locale }, { createdAt: now })
}
