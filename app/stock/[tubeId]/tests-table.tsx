/** Every test of one tube, newest first. */
import { dayInZone, daysBetween, formatDay } from '@/lib/domain/calendar'
import type { Shop } from '@/lib/domain/shop/shop'
import { carriedText } from '@/lib/domain/stock/correction-text'
import { carriedReading, type InstrumentCorrection } from '@/lib/domain/stock/instrument-correction'
import { heardTexts } from '@/lib/domain/stock/microphony'
import type { TubeTest } from '@/lib/domain/stock/tube'
import { plateCurrentText, screenCurrentText, settingText, transconductanceText } from '@/lib/domain/stock/tube-text'
import { capital, wordsFor } from '@/lib/domain/words'
import styles from '../stock.module.css'
import { ageText } from '../stock-words'

type Props = {
  readonly tests: readonly TubeTest[]
  readonly shop: Shop
  readonly now: Date
  readonly corrections: readonly InstrumentCorrection[]
}

export function TestsTable({ tests, shop, now, corrections }: Props) {
  const words = wordsFor(shop.words)
  const plate = capital(words.plate)
  if (tests.length === 0) return <p className="soft">Not tested here yet.</p>
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section className="table-scroll" tabIndex={0} aria-label="All tests">
      <table className={styles.tests}>
        <thead>
          <tr>
            <th>Tested</th>
            <th>On</th>
            <th className="num">{plate} / screen / grid</th>
            <th className="num">{plate} current</th>
            <th className="num">Transconductance</th>
            <th className="num">Screen current</th>
            <th>Seen</th>
          </tr>
        </thead>
        <tbody>
          {tests.map((test) => (
            <tr key={test.id}>
              <td className="nowrap">
                {formatDay(dayInZone(test.testedAt, shop.timeZone), words.locale)}
                <br />
                <span className="soft small">
                  {ageText(daysBetween(dayInZone(test.testedAt, shop.timeZone), dayInZone(now, shop.timeZone)))} ·{' '}
                  {test.testedBy}
                </span>
              </td>
              <td className="nowrap">
                {test.instrumentName}
                <br />
                <span className="soft small">
                  {test.calibratedOn
                    ? `calibrated ${formatDay(test.calibratedOn, words.locale)}`
                    : 'calibration not known'}
                </span>
              </td>
              <td className="num">{settingText(test) || '–'}</td>
              <td className="num">
                {plateCurrentText(test.sections) || '–'}
                <OnOther test={test} other={tests[0]?.instrumentName ?? ''} corrections={corrections} />
              </td>
              <td className="num">{transconductanceText(test.sections) || '–'}</td>
              <td className="num">{screenCurrentText(test.sections) || '–'}</td>
              <td>
                <Seen test={test} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

type OnOtherProps = {
  readonly test: TubeTest
  /** The instrument of the latest test. */
  readonly other: string
  readonly corrections: readonly InstrumentCorrection[]
}

/** What the latest instrument would have read, where reference tubes say so; else that the two do not compare. */
function OnOther({ test, other, corrections }: OnOtherProps) {
  const current = test.sections[0]?.plateCurrent ?? null
  if (current === null || test.instrumentName === other) return null
  const figure = 'plateCurrent' as const
  const carried = carriedReading(current, { from: test.instrumentName, to: other, figure }, corrections)
  return (
    <p className="small soft">
      {carried.ok ? `on ${other}: ${carriedText(carried.value, figure)}` : `not compared with ${other}`}
    </p>
  )
}

function Seen({ test }: { test: TubeTest }) {
  const { shorts, leakage, gas, note } = test
  const notes = [leakage && `Heater to cathode: ${leakage}`, gas && `Gas: ${gas}`, ...heardTexts(test), note].filter(
    Boolean,
  )
  return (
    <>
      {shorts ? (
        <span className="tag" data-tone="warn" data-shape="✕">
          short found, test stopped
        </span>
      ) : (
        'No shorts'
      )}
      {notes.map((line) => (
        <p key={line} className="small">
          {line}
        </p>
      ))}
    </>
  )
}
