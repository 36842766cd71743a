/** What the stock is made of: tubes with marks, lots without, parts; and what is done with all of it. */
import Link from 'next/link'
import { capital, type WordSet, wordsFor } from '@/lib/domain/words'
import styles from './stock.module.css'

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
  return (
    <nav aria-label="Stock" className={`${styles.sections} no-print`}>
      {sections.map(([href, text]) => (
        <Link key={href} href={href} aria-current={href === section ? 'page' : undefined}>
          {text}
        </Link>
      ))}
    </nav>
  )
}
