/** What a round of readings says: one row a socket, the verdict with its reason, and where the doubt comes from. */

import type { BenchResult, SocketResult } from '@/lib/domain/bench/bench-result'
import type { CrossCheck } from '@/lib/domain/bench/cross-check'
import { readingGapText } from '@/lib/domain/bench/reading-gap-text'
import { methodWord } from '@/lib/domain/bench/reading-set'
import type { Banded } from '@/lib/domain/bias/banded'
import { percentText, voltsText } from '@/lib/domain/bias/bias-figures'
import {
  balanceText,
  cautionText,
  errorSourceText,
  estimateText,
  idleFaultText,
  overRatingText,
  ratingSystemText,
  targetText,
  verdictText,
  verdictWord,
} from '@/lib/domain/bias/bias-text'
import type { Caution } from '@/lib/domain/bias/cautions'
import type { IdleResult } from '@/lib/domain/bias/idle'
import { capital, type Words } from '@/lib/domain/words'
import styles from './bench-report.module.css'
import { CrossCheckNote } from './cross-check-note'
import { VerdictTag } from './verdict-tag'

type Scale = { readonly factor: number; readonly unit: string; readonly decimals: number }
const MILLIAMPS: Scale = { factor: 1000, unit: 'mA', decimals: 1 }
const WATTS: Scale = { factor: 1, unit: 'W', decimals: 1 }
const PERCENT: Scale = { factor: 1, unit: '%', decimals: 0 }
const VOLTS: Scale = { factor: 1, unit: 'V', decimals: 0 }

/** "38.2 mA" over "± 0.6"; "about" stands before an estimate. The band is rounded up. */
function Band({ banded, scale }: { banded: Banded | null; scale: Scale }) {
  if (banded === null) return <span className="soft">not read</span>
  const { factor, unit, decimals } = scale
  const step = 10 ** -decimals
  const half = Math.ceil((banded.plusMinus * factor) / step - 1e-9) * step
  return (
    <>
      {banded.estimate && <span className="soft small">about </span>}
      {(banded.value * factor).toFixed(decimals)} {unit}
      <br />
      <span className="soft small">± {half.toFixed(decimals)}</span>
    </>
  )
}

/** What holds for the whole round is said once. */
function roundCautions(result: BenchResult): Caution[] {
  const all = result.sockets.flatMap(({ outcome }) => (outcome.kind === 'idle' ? outcome.idle.cautions : []))
  return all.filter(({ kind }) => kind === 'wall-high').slice(0, 1)
}

type ReportProps = {
  readonly result: BenchResult
  readonly words: Words
  /** By socket id, where current was found in more than one way. */
  readonly checks?: ReadonlyMap<string, CrossCheck>
}

export function BenchReport({ result, words, checks }: ReportProps) {
  const idle = result.sockets.filter(({ outcome }) => outcome.kind === 'idle')
  return (
    <div className="stack">
      {idle.length > 0 && <IdleTable results={idle} words={words} />}
      {roundCautions(result).map((caution) => (
        <p key={caution.kind} className={styles.caution}>
          {cautionText(caution, words)}
        </p>
      ))}
      {result.groups.map(({ name, balance }) => {
        const sentences = balanceText(balance, words)
        return sentences.length === 0 ? null : (
          <p key={name}>
            <strong>Group “{name}”.</strong> {sentences.join(' ')}
          </p>
        )
      })}
      <ul className={styles.sentences}>
        {result.sockets.map((each) => (
          <SocketSentences key={each.socket.id} result={each} words={words} check={checks?.get(each.socket.id)} />
        ))}
      </ul>
      <p className="soft small">
        Each ± is the 95 % band that meter, resistors and assumptions allow. Windows are the shop's own settings from
        common practice; the printed rating is another and stronger statement.
      </p>
    </div>
  )
}

function IdleTable({ results, words }: { results: readonly SocketResult[]; words: Words }) {
  return (
    <div className="table-scroll">
      <table>
        <thead>
          <tr>
            <th>Socket</th>
            <th>Verdict</th>
            <th>Type</th>
            <th className="num">{capital(words.plate)} to cathode</th>
            <th className="num">{capital(words.plate)} current</th>
            <th className="num">Screen current</th>
            <th className="num">{capital(words.plate)} dissipation</th>
            <th className="num">Of the rating</th>
            <th className="num">Screen dissipation</th>
          </tr>
        </thead>
        <tbody>
          {results.map(
            ({ socket, outcome }) => outcome.kind === 'idle' && <IdleRow key={socket.id} idle={outcome.idle} />,
          )}
        </tbody>
      </table>
    </div>
  )
}

function IdleRow({ idle }: { idle: IdleResult }) {
  return (
    <tr>
      <th scope="row">{idle.socket}</th>
      <td>
        <VerdictTag verdict={idle.verdict.verdict} word={verdictWord(idle.verdict.verdict)} />
      </td>
      <td>
        {idle.designation}
        <br />
        <span className="soft small nowrap">
          {idle.plateRatingWatts === null ? 'no rating known' : `${idle.plateRatingWatts} W`}
          {idle.ratingSystem && `, ${ratingSystemText(idle.ratingSystem)}`}
        </span>
      </td>
      <td className="num">
        <Band banded={idle.plateToCathodeVolts} scale={VOLTS} />
      </td>
      <td className="num">
        <Band banded={idle.plateAmps} scale={MILLIAMPS} />
      </td>
      <td className="num">
        <Band banded={idle.screenAmps} scale={MILLIAMPS} />
      </td>
      <td className="num">
        <Band banded={idle.plateWatts} scale={WATTS} />
      </td>
      <td className="num">
        <Band banded={idle.platePercent} scale={PERCENT} />
      </td>
      <td className="num">
        <Band banded={idle.screenWatts} scale={WATTS} />
        {idle.screenPercent && <span className="soft"> ({percentText(idle.screenPercent.value)})</span>}
      </td>
    </tr>
  )
}

type SentencesProps = { readonly result: SocketResult; readonly words: Words; readonly check?: CrossCheck }

function SocketSentences({ result, words, check }: SentencesProps) {
  const { socket, entry, outcome } = result
  if (outcome.kind === 'noted') {
    return (
      <li>
        <strong>{socket.position}.</strong>{' '}
        <span className="soft">
          {[
            [capital(words.plate), entry.plateVolts],
            ['Cathode', entry.cathodeVolts],
            ['Screen', entry.screenVolts],
            ['Grid', entry.gridVolts],
          ]
            .flatMap(([name, value]) => (typeof value === 'number' ? [`${name} ${voltsText(value)}`] : []))
            .join(', ')}
          . Kept, not judged.
        </span>
      </li>
    )
  }
  if (outcome.kind === 'gap') return <li>{readingGapText(outcome.gap, words)}</li>
  if (outcome.kind === 'incomplete') return <li>{idleFaultText(outcome.fault, words)}</li>
  if (outcome.kind === 'contradiction')
    return (
      <li className="caution">
        <strong>These readings cannot be true together.</strong> {idleFaultText(outcome.fault, words)}
      </li>
    )
  return <IdleSentences idle={outcome.idle} method={methodWord(entry.method)} words={words} check={check} />
}

type IdleProps = {
  readonly idle: IdleResult
  readonly method: string
  readonly words: Words
  readonly check?: CrossCheck
}

function IdleSentences({ idle, method, words, check }: IdleProps) {
  const over = overRatingText(idle, words)
  const target = targetText(idle, words)
  return (
    <li>
      <p>
        <strong>{idle.socket}.</strong> {verdictText(idle, words)} {target}
      </p>
      {over && <p className="caution">{over}</p>}
      {idle.cautions
        .filter(({ kind }) => kind !== 'wall-high')
        .map((caution) => (
          <p key={caution.kind} className={styles.caution}>
            {cautionText(caution, words)}
          </p>
        ))}
      {check && <CrossCheckNote check={check} believed={idle.method} words={words} />}
      <details>
        <summary>Why, and where the doubt comes from</summary>
        <ul>
          <li>Current by {method}.</li>
          {idle.estimates.map((estimate) => (
            <li key={estimate.kind}>{estimateText(estimate, words)}</li>
          ))}
          {idle.contributions.slice(0, 4).map(({ source, watts, share }) => (
            <li key={`${source.kind} ${source.name}`}>
              {capital(errorSourceText(source, words))}: ± {Math.abs(2 * watts).toFixed(2)} W, {Math.round(100 * share)}{' '}
              % of the doubt
            </li>
          ))}
        </ul>
      </details>
    </li>
  )
}
