/** A figure with the number of its source, as a handbook puts a mark beside it. */
import { tickText } from '@/lib/domain/plot/plot-text'
import type { Figure } from '@/lib/domain/tube/handbook-type'
import type { CardSources } from '@/lib/domain/tube/type-sources'
import styles from './card.module.css'

type Props = { readonly figure: Figure; readonly unit?: string; readonly sources: CardSources }

export function FigureText({ figure: [value, source], unit, sources }: Props) {
  return (
    <span className="nowrap">
      {tickText(value)}
      {unit && ` ${unit}`}
      <SourceMark source={source} sources={sources} />
    </span>
  )
}

export function SourceMark({ source, sources }: { source: Figure[1]; sources: CardSources }) {
  const number = sources.numberOf(source)
  return (
    <sup className={styles.mark}>
      <span className="sr-only">source </span>
      {number}
    </sup>
  )
}
