/** The tubes of one set: which goes into which socket, what it read, and what it would do there. */
import Link from 'next/link'
import { carriedReadingText, carriedSlopeText } from '@/lib/domain/matching/carried-text'
import { figure, type MatchingFormat, tubeCautionText } from '@/lib/domain/matching/matching-text'
import type { SetTube } from '@/lib/domain/matching/proposal'
import { conditionWord } from '@/lib/domain/stock/tube'
import { capital } from '@/lib/domain/words'
import styles from './set-card.module.css'

type Placed = { readonly tube: SetTube; readonly position: string }

type Props = { readonly placed: readonly Placed[]; readonly predicted: boolean; readonly format: MatchingFormat }

export function SetTable({ placed, predicted, format }: Props) {
  const { plate } = format.words
  return (
    <div className="table-scroll">
      <table>
        <thead>
          <tr>
            <th>Socket</th>
            <th>Mark</th>
            <th>Type</th>
            <th>Condition</th>
            {predicted && <th className="num">Idle predicted here</th>}
            {predicted && <th className="num">Transconductance predicted</th>}
            <th className="num">{predicted ? 'Read at its test' : `${capital(plate)} current`}</th>
            {!predicted && <th className="num">Transconductance</th>}
            <th className="num">Price</th>
          </tr>
        </thead>
        <tbody>
          {placed.map((each) => (
            <TubeRow key={each.tube.candidate.tubeId} {...each} format={format} />
          ))}
        </tbody>
      </table>
    </div>
  )
}

function TubeRow({ tube, position, format }: Placed & { readonly format: MatchingFormat }) {
  const { candidate, cautions, side, predicted } = tube
  return (
    <tr>
      <th scope="row">
        {position} {side && <span className="soft">side {side}</span>}
      </th>
      <td className="nowrap">
        <Link href={`/stock/${candidate.tubeId}`}>{candidate.mark}</Link>
      </td>
      <td>{candidate.designation}</td>
      <td>
        {conditionWord(candidate.condition)}
        {cautions.map((caution) => (
          <p key={caution.code} className={styles.caution}>
            {tubeCautionText(caution, format)}
          </p>
        ))}
      </td>
      {predicted ? <PredictedCells predicted={predicted} test={candidate.test} /> : <ReadCells test={candidate.test} />}
      <td className="num">{format.formatMoney(candidate.price)}</td>
    </tr>
  )
}

const milliamps = (value: number): string => `${figure(1000 * value, 1)} mA`
const slope = (value: number | null) =>
  value === null ? <span className="soft">not read</span> : `${figure(1000 * value, 2)} mA/V`

function ReadCells({ test }: { readonly test: SetTube['candidate']['test'] }) {
  const { plateCurrent, transconductance } = test
  return (
    <>
      <td className="num">
        {figure(1000 * plateCurrent, 2)} mA
        <CarriedUnder text={carriedReadingText(test)} />
      </td>
      <td className="num">
        {slope(transconductance)}
        <CarriedUnder text={carriedSlopeText(test)} />
      </td>
    </>
  )
}

function CarriedUnder({ text }: { readonly text: string | null }) {
  return text && <span className={`${styles.under} ${styles.carried}`}>{text}</span>
}

type PredictedProps = {
  readonly predicted: NonNullable<SetTube['predicted']>
  readonly test: SetTube['candidate']['test']
}

function PredictedCells({ predicted, test }: PredictedProps) {
  const { plateCurrent, transconductance } = predicted
  return (
    <>
      <td className="num">
        {milliamps(plateCurrent.value)}
        <span className={styles.under}>
          {figure(1000 * plateCurrent.low, 1)}–{figure(1000 * plateCurrent.high, 1)}
        </span>
      </td>
      <td className="num">{slope(transconductance.value)}</td>
      <td className="num">
        {milliamps(test.plateCurrent)}
        <span className={styles.under}>{slope(test.transconductance)}</span>
        <CarriedUnder text={carriedReadingText(test)} />
      </td>
    </>
  )
}
