/** The best few for the socket, each with what the set would be and the way to look at it. */
import Link from 'next/link'
import { ScrollRegion } from '@/app/_components/scroll-region'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import { exchangedSetText, gradeText, spreadText } from '@/lib/domain/matching/matching-text'
import type { SetOption } from '@/lib/domain/matching/proposal'
import { tubeFigureText } from '@/lib/domain/matching/replacing/tube-figure-text'
import { conditionWord } from '@/lib/domain/stock/tube'
import { capital } from '@/lib/domain/words'
import type { Limits } from '../limits-form'
import styles from '../set-card.module.css'
import { exchangeAddress } from './exchange-address'
import type { Compared } from './reckoning/compared-sets'
import type { ExchangeView } from './reckoning/exchange-view'
import type { Offer, Offers } from './reckoning/offers'

type Props = {
  readonly view: ExchangeView
  readonly offers: Offers
  readonly compared: Compared
  readonly limits: Limits
}

export function OffersTable({ view, offers: { best, dearer }, compared: { sets }, limits }: Props) {
  const { words, format, line } = view
  return (
    <section className="panel stack" aria-labelledby="offers">
      <h3 id="offers">Best in its place</h3>
      <p className="soft">{orderWords(view)}</p>
      {sets?.ok === false && <p>{sets.fault}</p>}
      {best.length === 0 && sets?.ok !== false && <p>No other {words.tube} in stock may stand there as things are.</p>}
      {best.length > 0 && <Table offers={best} view={view} limits={limits} />}
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

type TableProps = Pick<Props, 'view' | 'limits'> & { readonly offers: readonly Offer[] }

function Table({ offers, view, limits }: TableProps) {
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
          {offers.map((offer) => (
            <OfferRow key={offer.tube.tubeId} offer={offer} view={view} limits={limits} alone={alone} />
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  )
}

type RowProps = Pick<Props, 'view' | 'limits'> & { readonly offer: Offer; readonly alone: boolean }

function OfferRow({ offer: { tube, predicted, option }, view, limits, alone }: RowProps) {
  const { format, asked, job, drafted } = view
  const elsewhere = drafted.get(tube.tubeId)
  return (
    <tr>
      <th scope="row" className="nowrap">
        <Link href={`/stock/${tube.tubeId}`}>{tube.mark}</Link>
      </th>
      <td>
        {tube.designation}, {conditionWord(tube.condition)}
        <span className={styles.under}>{tubeFigureText(tube, predicted, format)}</span>
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
