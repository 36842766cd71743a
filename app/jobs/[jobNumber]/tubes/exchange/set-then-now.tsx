/** The set as it is and as it would be, side by side, before anything is pressed. */
import Link from 'next/link'
import { ScrollRegion } from '@/app/_components/scroll-region'
import { tubeCautions } from '@/lib/domain/matching/eligibility'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import {
  exchangedSetText,
  gradeText,
  setCautionText,
  spreadText,
  tubeCautionText,
} from '@/lib/domain/matching/matching-text'
import { predictedTube } from '@/lib/domain/matching/predicted-tube'
import type { SetOption } from '@/lib/domain/matching/proposal'
import { tubeFigureText } from '@/lib/domain/matching/replacing/tube-figure-text'
import { candidateOf } from '@/lib/domain/stock/candidate-of'
import { heardTexts } from '@/lib/domain/stock/microphony'
import { conditionWord, type StockedTube } from '@/lib/domain/stock/tube'
import { capital } from '@/lib/domain/words'
import styles from '../set-card.module.css'
import type { Compared } from './reckoning/compared-sets'
import type { ExchangeView, Seat } from './reckoning/exchange-view'
import type { Looked } from './reckoning/looked'

type Props = { readonly view: ExchangeView; readonly looked: Looked; readonly compared: Compared }

export function SetThenNow({ view, looked, compared }: Props) {
  const { asked, place, out, beside, words, format } = view
  const seats = place.sockets.flatMap(({ position }): (Seat & { readonly coming: StockedTube })[] => {
    if (position === asked.position) return [{ position, stocked: out, coming: looked.stocked }]
    const seat = beside.find((each) => each.position === position)
    return seat ? [{ ...seat, coming: seat.stocked }] : []
  })
  const heard = place.socket.role === 'output' || !looked.stocked.test ? [] : heardTexts(looked.stocked.test)
  const cautions = tubeCautions(candidateOf(looked.stocked, view.view), place.demand)
  return (
    <>
      <ScrollRegion label="The set now and then">
        <table>
          <thead>
            <tr>
              <th>Socket</th>
              <th>{capital(words.tube)} now</th>
              <th>{capital(words.tube)} then</th>
            </tr>
          </thead>
          <tbody>
            {seats.map(({ position, stocked, coming }) => (
              <tr key={position}>
                <th scope="row">{position}</th>
                <TubeCell stocked={stocked} view={view} compared={compared} />
                {coming === stocked ? (
                  <td className="soft">stays</td>
                ) : (
                  <TubeCell stocked={coming} view={view} compared={compared} />
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
      {beside.length > 0 && <Spreads view={view} looked={looked} compared={compared} />}
      {heard.map((line) => (
        <p key={line} className={styles.caution}>
          {looked.stocked.tube.mark}, heard at its test: {line}
        </p>
      ))}
      {cautions.map((caution) => (
        <p key={caution.code} className={styles.caution}>
          {tubeCautionText(caution, format)}
        </p>
      ))}
    </>
  )
}

type CellProps = { readonly stocked: StockedTube; readonly view: ExchangeView; readonly compared: Compared }

function TubeCell({ stocked, view, compared }: CellProps) {
  const candidate = candidateOf(stocked, view.view)
  const predicted = predictedTube(compared.limits.predictions, candidate.tubeId)
  return (
    <td>
      <Link href={`/stock/${candidate.tubeId}`}>{candidate.mark}</Link> {candidate.designation},{' '}
      {conditionWord(candidate.condition)}
      <span className={styles.under}>{tubeFigureText(candidate, predicted, view.format)}</span>
    </td>
  )
}

function Spreads({ view, looked, compared }: Props) {
  const { sets } = compared
  if (sets === null) return null
  if (!sets.ok) return <p>{sets.fault} Nothing is claimed of how alike they are.</p>
  const { option } = looked
  return (
    <dl className="facts">
      <dt>Now</dt>
      <dd>{sets.value.now ? setWords(sets.value.now) : 'does not compare with those that stay'}</dd>
      {looked.against.length === 0 && (
        <>
          <dt>Then</dt>
          <dd>
            {option
              ? `${setWords(option)} ${exchangedSetText(option, view.format) ?? ''}`
              : 'It was tested at another point or on another instrument than those that stay, so nothing is claimed of how alike they are.'}
            {option?.cautions.map((caution) => (
              <span key={caution.code} className={styles.under}>
                {setCautionText(caution)}
              </span>
            ))}
          </dd>
        </>
      )}
    </dl>
  )
}

const setWords = ({ spreads, predicted, match }: SetOption): string =>
  `${capital(spreadText(spreads, predicted))}. ${gradeText(match, USUAL_YARDSTICKS, predicted)}`
