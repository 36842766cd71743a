/** The mark that stands before a line of the legend, drawn as it is drawn on the sheet. */
import type { LegendKind } from '@/lib/domain/plot/plot-text'
import styles from './plate-curves.module.css'

function Shape({ kind }: { kind: LegendKind }) {
  switch (kind) {
    case 'curve':
      return <path className={styles.curve} d="M3 20C8 6 14 5 37 4" />
    case 'heat':
      return (
        <>
          <path className={styles.hot} d="M6 2C8 14 18 19 37 20V2Z" />
          <path className={styles.limit} d="M6 2C8 14 18 19 37 20" />
        </>
      )
    case 'point':
      return <circle className={styles.point} cx="20" cy="12" r="4.5" />
    case 'point-before':
      return <circle className={styles.pointBefore} cx="20" cy="12" r="4.5" />
    case 'box':
      return <rect className={styles.box} x="8" y="4" width="24" height="16" />
    case 'load':
      return <path className={styles.load} d="M4 3L18 11L36 21" />
  }
}

export function LegendMark({ kind }: { kind: LegendKind }) {
  return (
    <svg viewBox="0 0 40 24" width="40" height="24" aria-hidden="true">
      <Shape kind={kind} />
    </svg>
  )
}
