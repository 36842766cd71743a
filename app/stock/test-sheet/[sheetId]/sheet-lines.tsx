/** The lines of a test sheet, the last one first. */
import Link from 'next/link'
import { heardTexts } from '@/lib/domain/stock/microphony'
import type { SheetSpread } from '@/lib/domain/stock/sheet/sheet-spread'
import type { SheetLine } from '@/lib/domain/stock/sheet/test-sheet'
import { plateCurrentText, transconductanceText } from '@/lib/domain/stock/tube-text'
import { capital, type Words } from '@/lib/domain/words'
import styles from './sheet.module.css'

type Props = {
  readonly sheetId: string
  readonly lines: readonly SheetLine[]
  readonly spread: SheetSpread
  readonly words: Words
  /** Test record of the line being put right. */
  readonly correcting: string | null
  readonly mayCorrect: boolean
}

export function SheetLines({ sheetId, lines, spread, words, correcting, mayCorrect }: Props) {
  if (lines.length === 0) return null
  const odd = new Set(spread.alarms.map(({ mark }) => mark))
  const alike = new Set(spread.alike)
  return (
    <section className="panel">
      <h2>Written down</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
      <section className="table-scroll" tabIndex={0} aria-label="Lines of this sheet">
        <table className={styles.lines}>
          <thead>
            <tr>
              <th className="num">No.</th>
              <th>Mark</th>
              <th className="num">{capital(words.plate)} current</th>
              <th className="num">Transconductance</th>
              <th>Seen</th>
              {mayCorrect && <th>Correct</th>}
            </tr>
          </thead>
          <tbody>
            {lines.toReversed().map(({ tubeId, mark, test }, place) => (
              <tr key={test.id} aria-current={test.id === correcting || undefined}>
                <td className="num">{lines.length - place}</td>
                <td className="nowrap">
                  <Link href={`/stock/${tubeId}`} prefetch={false}>
                    {mark}
                  </Link>
                </td>
                <td className="num">{plateCurrentText(test.sections) || '–'}</td>
                <td className="num">{transconductanceText(test.sections) || '–'}</td>
                <td>
                  <LineTag shorts={test.shorts} odd={odd.has(mark)} alike={alike.has(mark)} />
                  {[test.leakage, test.gas, ...heardTexts(test), test.note].filter(Boolean).join('; ')}
                </td>
                {mayCorrect && (
                  <td>
                    <Link href={`/stock/test-sheet/${sheetId}?line=${test.id}`} prefetch={false}>
                      Correct<span className="sr-only"> {mark}</span>
                    </Link>
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </section>
  )
}

function LineTag({ shorts, odd, alike }: { shorts: boolean; odd: boolean; alike: boolean }) {
  if (shorts)
    return (
      <span className="tag" data-tone="warn" data-shape="✕">
        short, test stopped
      </span>
    )
  if (odd)
    return (
      <span className="tag" data-tone="warn" data-shape="!">
        odd: look again
      </span>
    )
  if (!alike) return null
  return (
    <span className="tag" data-tone="good" data-shape="=">
      alike
    </span>
  )
}
