/** The best few for the socket, each with what the set would be and the way to look at it. */
import Link from 'next/link'
import { ScrollRegion } from '@/app/_components/scroll-region'
import type { Candidate } from '@/lib/domain/matching/candidate'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import { exchangedSetText, gradeText, spreadText } from '@/lib/domain/matching/matching-text'
import type { SetOption } from '@/lib/domain/matching/proposal'
import { conditionWord } from '@/lib/domain/stock/tube'
import { capital } from '@/lib/domain/words'
import type { Limits } from '../limits-form'
import styles from '../set-card.module.css'
import { exchangeAddress } from './exchange-address'
import type { ExchangeView } from './exchange-view'
import { type Compared, offersOf } from './replacements'
import { tubeFigure } from './tube-figure'

type Props = { readonly view: ExchangeView; readonly compared: Compared; readonly limits: Limits }

export function OffersTable({ view, compared, limits }: Props) {
  const { words, format, line } = view
  const { best, dearer } = offersOf(view, compared)
  return (
    <section className="panel stack" aria-labelledby="offers">
      <h3 id="offers">Best in its place</h3>
      <p className="soft">{orderWords(view)}</p>
      {!compared.sets.ok && <p>{compared.sets.fault}</p>}
      {best.length === 0 && compared.sets.ok && <p>No other {words.tube} in stock may stand there as things are.</p>}
      {best.length > 0 && <Table tubes={best} view={view} compared={compared} limits={limits} />}
      {dearer > 0 && (
        <p className="soft">
          {dearer === 1 ? '1 more would do, but costs' : `${dearer} more would do, but cost`} more than the{' '}
          {format.formatMoney(line.unitPrice)} that was quoted: revise the quote for one of them.
        </p>
      )}
    </section>
  )
}

function orderWords({ place }: ExchangeView): string {
  if (place.socket.role === 'phase-inverter') return 'Best balanced sections first.'
  if (place.group === null) return 'Cheapest first: nothing is compared in this socket.'
  return 'Least loss for the set first, weighed as in the choice: spread, sides, aim, price, rarity and how sure the figures are.'
}

type TableProps = Props & { readonly tubes: readonly Candidate[] }

function Table({ tubes, view, compared, limits }: TableProps) {
  const { words } = view
  const alone = view.beside.length === 0
  return (
    <ScrollRegion label="Best in its place">
      <table>
        <thead>
          <tr>
            <th>Mark</th>
            <th>{capital(words.tube)}</th>
            {!alone && <th>The set then</th>}
            <th className="num">Price</th>
            <th>
              <span className="sr-only">Look at it</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {tubes.map((tube) => (
            <Offer key={tube.tubeId} tube={tube} view={view} compared={compared} limits={limits} alone={alone} />
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  )
}

type OfferProps = Props & { readonly tube: Candidate; readonly alone: boolean }

function Offer({ tube, view, compared, limits, alone }: OfferProps) {
  const { format, asked, job, drafted } = view
  const option = compared.sets.ok ? compared.sets.value.setWith(tube.tubeId) : null
  const elsewhere = drafted.get(tube.tubeId)
  return (
    <tr>
      <th scope="row" className="nowrap">
        <Link href={`/stock/${tube.tubeId}`}>{tube.mark}</Link>
      </th>
      <td>
        {tube.designation}, {conditionWord(tube.condition)}
        <span className={styles.under}>{tubeFigure(tube, compared.limits, format)}</span>
        {elsewhere && (
          <span className={styles.under}>stands on the draft quote of job {elsewhere}, held by nothing yet</span>
        )}
      </td>
      {!alone && <td>{option && <SetThen option={option} view={view} />}</td>}
      <td className="num">{format.formatMoney(tube.price)}</td>
      <td>
        <Link
          className="button quiet nowrap"
          href={exchangeAddress(job.number, { ...asked, mark: tube.mark }, typedLimits(limits))}
        >
          Look at {tube.mark}
        </Link>
      </td>
    </tr>
  )
}

function SetThen({ option, view }: { readonly option: SetOption; readonly view: ExchangeView }) {
  return (
    <>
      {spreadText(option.spreads, option.predicted)}
      <span className={styles.under}>
        {gradeText(option.match, USUAL_YARDSTICKS, option.predicted)} {exchangedSetText(option, view.format)}
      </span>
    </>
  )
}

export const typedLimits = ({ typed, over, at, on }: Limits): Record<string, string> => ({
  age: typed.age,
  ...(over ? { over: 'on' } : {}),
  ...(at === 'test-point' ? { at } : {}),
  ...(on === '' ? {} : { on }),
})
