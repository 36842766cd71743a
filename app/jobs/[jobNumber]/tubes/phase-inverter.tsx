/** A phase inverter's socket: the twins in stock with the best balanced sections. */
import Link from 'next/link'
import type { Socket } from '@/lib/domain/amp/socket'
import { demandAlone } from '@/lib/domain/bench/place-demand'
import { dayInZone, formatDay } from '@/lib/domain/calendar'
import type { Job } from '@/lib/domain/job/job'
import { type BalancedTwin, MAKERS_ALLOW } from '@/lib/domain/matching/balanced-sections'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import { figure, testPointText } from '@/lib/domain/matching/matching-text'
import { formatMoney } from '@/lib/domain/money'
import type { Quote } from '@/lib/domain/quote/quote'
import type { Shop } from '@/lib/domain/shop/shop'
import { balancedTwins } from '@/lib/domain/stock/balanced-twins'
import { stockType } from '@/lib/domain/stock/stock-type'
import { wordsFor } from '@/lib/domain/words'
import { listBriefStock } from '@/lib/store/brief-stock'
import { submitTwin } from './actions'
import { ChooseForm } from './choose-form'
import { ChosenSet } from './chosen-set'
import type { Limits } from './limits-form'
import styles from './set-card.module.css'

type Props = {
  readonly socket: Socket
  readonly job: Job
  readonly shop: Shop
  readonly limits: Limits
  readonly quote: Quote | null
  readonly mayChoose: boolean
}

const SHOWN = 5

export async function PhaseInverter({ socket, job, shop, limits, quote, mayChoose }: Props) {
  const words = wordsFor(shop.words)
  const { family, base, mayHaveTwoSections, variant } = stockType(socket.typeFitted, shop)
  if (!variant || !mayHaveTwoSections) return null
  const chosen = (quote?.lines ?? []).filter(
    ({ kind, socketPosition }) => kind === 'tube' && socketPosition === socket.position,
  )
  const twins = await twinsInStock({ family, base }, job, shop, limits)
  return (
    <section className="panel stack" aria-labelledby={`inverter-${socket.position}`}>
      <h2 id={`inverter-${socket.position}`}>
        Phase inverter {socket.position}: {family} with balanced sections
      </h2>
      <p className="soft">
        Both sections of one {words.tube} are compared, at its own test point. Makers allow {100 * MAKERS_ALLOW} %
        between them: common practice. One that rings strongly when tapped comes last.
      </p>
      {quote && chosen.length > 0 && (
        <ChosenSet lines={chosen} quote={quote} jobNumber={job.number} group={socket.position} words={words} />
      )}
      {twins.length === 0 ? (
        <p>
          No free {family} in stock has a test of both sections within these limits. Test both, or let older tests
          count.
        </p>
      ) : (
        <TwinTable twins={twins.slice(0, SHOWN)} {...{ socket, job, shop, mayChoose }} />
      )}
    </section>
  )
}

async function twinsInStock(wanted: { family: string; base: string }, job: Job, shop: Shop, limits: Limits) {
  const now = new Date()
  const view = { now, timeZone: shop.timeZone, jobInHand: job.id, catalogue: shop }
  const allowed = {
    maximumTestAgeDays: limits.age,
    allowOverPrintedRating: limits.over,
    priceCap: limits.cap,
    oneDesignation: limits.one,
    yardsticks: USUAL_YARDSTICKS,
    asOf: dayInZone(now, shop.timeZone),
  }
  const stock = await listBriefStock(wanted.family)
  return balancedTwins(stock, demandAlone(wanted), { ...view, limits: allowed })
}

type TableProps = Omit<Props, 'limits' | 'quote'> & { readonly twins: readonly BalancedTwin[] }

function TwinTable({ twins, mayChoose, ...place }: TableProps) {
  return (
    <div className="table-scroll">
      <table>
        <thead>
          <tr>
            <th>Mark</th>
            <th className="num">Currents, apart</th>
            <th className="num">Transconductance apart</th>
            <th>Tested</th>
            <th className="num">Price</th>
            {mayChoose && (
              <th>
                <span className="sr-only">Choose</span>
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {twins.map((twin) => (
            <TwinRow key={twin.candidate.tubeId} twin={twin} mayChoose={mayChoose} {...place} />
          ))}
        </tbody>
      </table>
    </div>
  )
}

const percent = (value: number): string => `${figure(100 * value, 1)} %`

function TwinRow({ twin, socket, job, shop, mayChoose }: Omit<TableProps, 'twins'> & { readonly twin: BalancedTwin }) {
  const words = wordsFor(shop.words)
  const { candidate, current, transconductance, within } = twin
  const { test, sections, tubeId, mark, designation, price, heard } = candidate
  const money = (amount: typeof price) => formatMoney(amount, shop.currency, words.locale)
  return (
    <tr>
      <th scope="row">
        <Link className="nowrap" href={`/stock/${tubeId}`}>
          {mark}
        </Link>
        <span className={styles.under}>{designation}</span>
        {heard?.map((line) => (
          <span key={line} className={styles.under}>
            {line}
          </span>
        ))}
      </th>
      <td className="num">
        {sections.map(({ plateCurrent }) => figure(1000 * plateCurrent, 2)).join(' / ')} mA
        <span className={styles.under}>{percent(current)}</span>
        {!within && <span className={styles.under}>beyond what makers allow</span>}
      </td>
      <td className="num">{transconductance === null ? 'not read on both' : percent(transconductance)}</td>
      <td>
        {formatDay(test.testedAt.slice(0, 10), words.locale)} on {test.instrument} at{' '}
        {testPointText(test.testPoint, { words, formatMoney: money })}
      </td>
      <td className="num">{money(price)}</td>
      {mayChoose && (
        <td>
          <ChooseForm
            action={submitTwin.bind(null, job.number, socket.position)}
            values={{ tube: tubeId }}
            label={`Quote ${mark}`}
          />
        </td>
      )}
    </tr>
  )
}
