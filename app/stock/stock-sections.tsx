/** What the stock is made of: tubes with marks, lots without, parts; and what is done with all of it. */
import { SectionTabs } from '@/app/_components/section-tabs'
import { capital, type WordSet, wordsFor } from '@/lib/domain/words'

export type StockSection =
  | '/stock'
  | '/stock/lots'
  | '/stock/parts'
  | '/stock/sets'
  | '/stock/labels'
  | '/stock/exchange'

export function StockSections({ words, section }: { words: WordSet; section: StockSection }) {
  const sections: readonly (readonly [StockSection, string])[] = [
    ['/stock', `${capital(wordsFor(words).tubes)} with a mark`],
    ['/stock/lots', 'Lots by count'],
    ['/stock/parts', 'Parts'],
    ['/stock/sets', 'Sets'],
    ['/stock/labels', 'Labels'],
    ['/stock/exchange', 'Import and export'],
  ]
  return <SectionTabs label="Stock" tabs={sections} open={section} />
}
