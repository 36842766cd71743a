/** The list to print and to sort the drawer by: each set with its marks, spread and price; singles; what to test next. */
import Link from 'next/link'
import { PressForm } from '@/app/jobs/[jobNumber]/press-form'
import { formatDay } from '@/lib/domain/calendar'
import { exclusionText, figure, type MatchingFormat, spreadText } from '@/lib/domain/matching/matching-text'
import { formatMoney, money } from '@/lib/domain/money'
import type { Shop } from '@/lib/domain/shop/shop'
import { capital, wordsFor } from '@/lib/domain/words'
import type { SetsPlan, TestNext } from '@/lib/planning/sets/sets-plan'
import { madeText, meantText, provedText, setDoubtText, setWord, testNextText } from '@/lib/planning/sets/sets-text'
import type { StockTube } from '@/lib/planning/sets/stock-cohorts'
import { keepAsSets } from '../actions'

type Props = { readonly plan: SetsPlan; readonly runId: string; readonly shop: Shop }

/** A stock can be long; the stock list shows the rest. */
const SHOWN = 60
/** As many marks as an address holds. */
const LABELLED = 200

export function SetsResult({ plan, runId, shop }: Props) {
  const words = wordsFor(shop.words)
  const format: MatchingFormat = { words, formatMoney: (amount) => formatMoney(amount, shop.currency, words.locale) }
  const { sets, singles } = plan
  const marks = sets.flatMap(({ tubes }) => tubes.map(({ mark }) => mark))
  const total = money(sets.reduce((sum, { price }) => sum + price, 0))
  return (
    <>
      <section className="panel stack" aria-labelledby="made">
        <div className="panel-head">
          <h2 id="made">{madeText(plan, words)}</h2>
          <span>{format.formatMoney(total)} in sets, at the prices of the single ones</span>
        </div>
        <p>{provedText(plan)}</p>
        <p className="soft">{meantText(plan, format, testedText(plan, words.locale))}</p>
        {sets.length > 0 && <SetTable plan={plan} format={format} />}
        {marks.length > 0 && marks.length <= LABELLED && (
          <p className="no-print">
            <Link href={`/stock/labels?${new URLSearchParams({ marks: marks.join(' ') })}`}>
              Labels for all of them
            </Link>
          </p>
        )}
        {sets.length > 0 && (
          <PressForm action={keepAsSets.bind(null, runId)} quiet>
            Keep as sets
          </PressForm>
        )}
      </section>
      {singles.length > 0 && (
        <section className="panel stack" aria-labelledby="singles">
          <h2 id="singles">Left single</h2>
          <p>
            {singles.map((tube, at) => (
              <span key={tube.tubeId}>
                {at > 0 && '; '}
                <Link className="nowrap" href={`/stock/${tube.tubeId}`}>
                  {tube.mark}
                </Link>{' '}
                {readingText(tube)}
              </span>
            ))}
          </p>
        </section>
      )}
      <TestNextList next={plan.testNext} format={format} />
    </>
  )
}

function testedText({ sets, singles }: SetsPlan, locale: string): string {
  const days = [...sets.flatMap(({ tubes }) => tubes), ...singles].map(({ testedAt }) => testedAt.slice(0, 10)).sort()
  const [first = '', last = ''] = [days[0], days.at(-1)]
  if (first === '') return 'Tested'
  return first === last
    ? `Tested on ${formatDay(first, locale)}`
    : `Tested from ${formatDay(first, locale)} to ${formatDay(last, locale)}`
}

function readingText({ plateCurrent, transconductance }: StockTube): string {
  const slope = transconductance === null ? '' : `, ${figure(1000 * transconductance, 2)} mA/V`
  return `${figure(1000 * plateCurrent, 2)} mA${slope}`
}

type TableProps = { readonly plan: SetsPlan; readonly format: MatchingFormat }

function SetTable({ plan, format }: TableProps) {
  const { sets, order } = plan
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section className="table-scroll" tabIndex={0} aria-label={`The ${setWord(order.size, 2)}`}>
      <table>
        <thead>
          <tr>
            <th className="num">No.</th>
            <th>Marks and readings</th>
            <th>Apart</th>
            <th className="num">Price together</th>
          </tr>
        </thead>
        <tbody>
          {sets.map((set, at) => (
            <tr key={set.tubes[0]?.tubeId}>
              <td className="num">{at + 1}</td>
              <th scope="row">
                {set.tubes.map((tube) => (
                  <div key={tube.tubeId}>
                    <Link href={`/stock/${tube.tubeId}`}>{tube.mark}</Link>{' '}
                    <span className="soft">
                      {tube.designation}, {readingText(tube)}
                      {tube.carried && `, carried from ${tube.carried.from}`}
                    </span>
                  </div>
                ))}
              </th>
              <td>
                {capital(spreadText(set.spreads))}
                {setDoubtText(set, plan) && <p className="small soft">{setDoubtText(set, plan)}</p>}
              </td>
              <td className="num">{format.formatMoney(set.price)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

function TestNextList({ next, format }: { readonly next: readonly TestNext[]; readonly format: MatchingFormat }) {
  if (next.length === 0) return null
  return (
    <section className="panel stack" aria-labelledby="next">
      <h2 id="next">Test next</h2>
      <p className="soft">
        Free {format.words.tubes} of the type without a reading that compares. One tested at the same point on the same
        instrument may turn out a partner for a single.
      </p>
      <ul>
        {next.slice(0, SHOWN).map((each) => (
          <li key={each.candidate.tubeId}>
            <Link href={`/stock/${each.candidate.tubeId}`}>{each.candidate.mark}</Link> {testNextText(each)}.{' '}
            <span className="soft">{each.reasons.map((reason) => exclusionText(reason, format)).join(' ')}</span>
          </li>
        ))}
      </ul>
      {next.length > SHOWN && <p className="soft">And {next.length - SHOWN} more.</p>}
    </section>
  )
}
