/** Printed operating points, one in a column as in a data sheet; remarks below. */
import { ROW_KEYS, rowName } from '@/lib/domain/tube/figure-names'
import type { HandbookType, OperatingRow, RowKey } from '@/lib/domain/tube/handbook-type'
import type { CardSources } from '@/lib/domain/tube/type-sources'
import type { Words } from '@/lib/domain/words'
import styles from './card.module.css'
import { FigureText } from './figure-text'

type Props = { readonly type: HandbookType; readonly sources: CardSources; readonly words: Words }

export function RowsPanel({ type: { rows }, sources, words }: Props) {
  if (rows.length === 0) return null
  const keys = ROW_KEYS.filter((key) => rows.some(({ figures }) => figures[key]))
  const remarks = rows.flatMap((row, place) => remarksOf(row, place, words))
  return (
    <section className="panel">
      <h2>Printed operating points</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
      <section className="table-scroll" tabIndex={0} aria-label="Printed operating points">
        <table className={`sheet ${styles.rows}`}>
          <thead>
            <tr>
              <th>Figure</th>
              {rows.map(({ label }, place) => (
                <th key={label} scope="col" className="num">
                  <span className={styles.place}>{place + 1}.</span> {label}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {keys.map((key) => (
              <RowLine key={key} of={key} rows={rows} sources={sources} words={words} />
            ))}
          </tbody>
        </table>
      </section>
      {rows.some(({ currentsFor }) => currentsFor === 2) && (
        <p className="small soft">Currents printed for a pair are sums of both.</p>
      )}
      {remarks.length > 0 && (
        <ul className={`small ${styles.remarks}`}>
          {remarks.map((remark) => (
            <li key={remark}>{remark}</li>
          ))}
        </ul>
      )}
    </section>
  )
}

type LineProps = Omit<Props, 'type'> & { readonly of: RowKey; readonly rows: readonly OperatingRow[] }

function RowLine({ of, rows, sources, words }: LineProps) {
  const { label, unit } = rowName(of, words)
  return (
    <tr>
      <th scope="row">
        {label}
        {unit && <span className="soft">, {unit}</span>}
      </th>
      {rows.map((row) => {
        const figure = row.figures[of]
        return (
          <td key={row.label} className="num">
            {figure && <FigureText figure={figure} sources={sources} />}
          </td>
        )
      })}
    </tr>
  )
}

/** Where another source prints another figure, it is said here; the one in the table is used. */
function remarksOf({ note, figures }: OperatingRow, place: number, words: Words): string[] {
  const about = ROW_KEYS.flatMap((key) => {
    const remark = figures[key]?.[2]
    return remark ? [`${place + 1}. ${rowName(key, words).label}: ${remark.replace(/\.$/, '')}.`] : []
  })
  return note ? [`${place + 1}. ${note.replace(/\.$/, '')}.`, ...about] : about
}
