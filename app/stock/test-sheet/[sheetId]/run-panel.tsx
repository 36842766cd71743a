/** What the run shows so far: range and mean of each figure, what is alike, what lies far off. */

import type { BookReading } from '@/lib/domain/stock/sheet/book-point'
import { LEAST_RUN } from '@/lib/domain/stock/sheet/outlier'
import type { FigureSpread, SheetSpread } from '@/lib/domain/stock/sheet/sheet-spread'
import { alarmText, sheetFigureName, sheetFigureText } from '@/lib/domain/stock/sheet/sheet-text'
import { capital, type Words } from '@/lib/domain/words'
import styles from './sheet.module.css'

type Props = {
  readonly spread: SheetSpread
  readonly book: BookReading | null
  readonly count: number
  readonly words: Words
  readonly twin: boolean
  /** Mark of the line written last. */
  readonly last: string | null
}

export function RunPanel({ spread, book, count, words, twin, last }: Props) {
  return (
    <section className="panel stack" aria-label="The run so far">
      <h2>
        The run so far: {count} {count === 1 ? words.tube : words.tubes}
      </h2>
      <Alarms spread={spread} words={words} twin={twin} last={last} />
      {spread.figures.length === 0 && <p className="soft">The first reading starts the run.</p>}
      {spread.figures.length > 0 && (
        <dl className="facts">
          {spread.figures.map((figure) => (
            <FigureLine
              key={`${figure.kind} ${figure.section}`}
              figure={figure}
              words={words}
              twin={twin}
              book={book}
            />
          ))}
        </dl>
      )}
      {spread.alike.length > 0 && (
        <p>
          <strong>{spread.alike.length}</strong> lie within 5 mA and 10 % of one another: {spread.alike.join(', ')}.
        </p>
      )}
      {spread.figures.length > 0 && spread.alike.length === 0 && count > 1 && (
        <p>No two lie within 5 mA and 10 % of one another yet.</p>
      )}
      <p className="soft small">
        {book
          ? 'The handbook prints this test point.'
          : 'The handbook prints nothing for this test point, so readings are only compared with one another.'}{' '}
        Odd ones are told from {LEAST_RUN} readings on.
      </p>
    </section>
  )
}

function Alarms({ spread, words, twin, last }: Pick<Props, 'spread' | 'words' | 'twin' | 'last'>) {
  const ofLast = spread.alarms.filter(({ mark }) => mark === last)
  const others = [...new Set(spread.alarms.filter(({ mark }) => mark !== last).map(({ mark }) => mark))]
  return (
    <>
      {ofLast.length > 0 && (
        <div className={`caution ${styles.alarm}`} role="alert">
          <strong>Look again.</strong>
          {ofLast.map((alarm) => (
            <p key={`${alarm.kind} ${alarm.section} ${alarm.against}`}>{alarmText(alarm, words, twin)}</p>
          ))}
        </div>
      )}
      {others.length > 0 && <p>Odd ones earlier: {others.join(', ')}.</p>}
      {spread.shorts.length > 0 && <p>Short found in: {spread.shorts.join(', ')}.</p>}
    </>
  )
}

function FigureLine({ figure, words, twin, book }: Pick<Props, 'words' | 'twin' | 'book'> & { figure: FigureSpread }) {
  const text = (value: number) => sheetFigureText(figure.kind, value)
  const printed = book?.[figure.kind] ?? null
  return (
    <>
      <dt>{capital(sheetFigureName(figure, words, twin))}</dt>
      <dd className="num">
        {figure.low === figure.high ? text(figure.low) : `${text(figure.low)} to ${text(figure.high)}`}, mean{' '}
        {text(figure.mean)}
        {printed !== null && `; handbook ${text(printed)}`}
      </dd>
    </>
  )
}
