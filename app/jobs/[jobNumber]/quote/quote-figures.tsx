/** The sums of a quote, and what they are against the customer's limit. */
import { formatMoney, type Money } from '@/lib/domain/money'
import { labourWord } from '@/lib/domain/quote/labour-word'
import type { QuoteTotals } from '@/lib/domain/quote/quote'
import { spendingOf, spendingText } from '@/lib/domain/quote/spending'
import { capital, type Words } from '@/lib/domain/words'

export type FiguresTerms = {
  readonly currency: string
  readonly taxName: string
  readonly taxMilliPercent: number
  readonly spendingLimit: Money | null
}

type Props = {
  readonly totals: QuoteTotals
  readonly terms: FiguresTerms
  readonly words: Words
  readonly unread?: number
}

export function QuoteFigures({ totals, terms, words, unread = 0 }: Props) {
  const show = (amount: Money) => formatMoney(amount, terms.currency, words.locale)
  const spending = spendingOf(totals.total, terms.spendingLimit)
  const { labour, part, tube, fee } = totals.byKind
  const rows = [
    [labourWord(words), labour],
    ['Parts', part],
    [capital(words.tubes), tube],
    ['Fees and credits', fee],
  ] as const
  return (
    <div aria-live="polite">
      <table>
        <tbody>
          {rows.map(([label, amount]) =>
            amount === 0 ? null : (
              <tr key={label}>
                <th scope="row">{label}</th>
                <td className="num">{show(amount)}</td>
              </tr>
            ),
          )}
          {terms.taxMilliPercent > 0 && (
            <tr>
              <th scope="row">
                {terms.taxName} {terms.taxMilliPercent / 1000} %
                {totals.taxed !== totals.subtotal && ` on ${show(totals.taxed)}`}
              </th>
              <td className="num">{show(totals.tax)}</td>
            </tr>
          )}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">Total</th>
            <td className="num">
              <strong>{show(totals.total)}</strong>
            </td>
          </tr>
          {totals.deposit > 0 && (
            <tr>
              <th scope="row">Deposit before work starts</th>
              <td className="num">{show(totals.deposit)}</td>
            </tr>
          )}
        </tfoot>
      </table>
      {unread > 0 && (
        <p className="soft">
          {unread === 1 ? 'One line is' : `${unread} lines are`} not complete yet and not in these sums.
        </p>
      )}
      <p className={spending.kind === 'over' ? 'caution' : 'soft'}>{spendingText(spending, show)}</p>
    </div>
  )
}
