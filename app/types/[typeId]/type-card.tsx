/** All that is known of one type, in the order of a data sheet. */
import type { Shop } from '@/lib/domain/shop/shop'
import type { HandbookType } from '@/lib/domain/tube/handbook-type'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import { cardSources } from '@/lib/domain/tube/type-sources'
import { wordsFor } from '@/lib/domain/words'
import { BasePanel } from './base-panel'
import { CurvesPanel } from './curves-panel'
import { DropPanel } from './drop-panel'
import { EquivalentsPanel } from './equivalents-panel'
import { RatingsPanel } from './ratings-panel'
import { RowsPanel } from './rows-panel'
import { SourcesPanel } from './sources-panel'

type Props = { readonly type: HandbookType; readonly catalogue: TubeCatalogue; readonly shop: Shop }

export function TypeCard({ type, catalogue, shop }: Props) {
  const words = wordsFor(shop.words)
  const sources = cardSources(type)
  const Curves = type.role === 'rectifier' ? DropPanel : CurvesPanel
  return (
    <>
      <p>
        {type.className}, family {type.family}
      </p>
      <div className="columns even">
        <div className="stack">
          <BasePanel type={type} sources={sources} />
          <EquivalentsPanel type={type} sources={sources} catalogue={catalogue} />
        </div>
        <RatingsPanel type={type} sources={sources} words={words} />
      </div>
      <RowsPanel type={type} sources={sources} words={words} />
      <Curves type={type} catalogue={catalogue} words={words} />
      <SourcesPanel sources={sources} notes={type.notes} />
    </>
  )
}
