/** What it costs, what was paid, what is open, and taking a payment. */
import { onceMark } from '@/app/_components/form/once'
import { formatInstant } from '@/lib/domain/calendar'
import { paymentText } from '@/lib/domain/job/account'
import { exactDecimal, formatMoney, type Money, minorDigits, money } from '@/lib/domain/money'
import { type Quote, quoteTitle, totalsOf } from '@/lib/domain/quote/quote'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import type { JobAccount } from '@/lib/workflow/handover/job-account'
import { submitPayment } from './actions'
import { PaymentForm } from './payment-form'

type Props = {
  readonly books: JobAccount
  readonly quote: Quote | null
  readonly jobNumber: string
  readonly shop: Shop
  readonly closed: boolean
}

export function MoneyPanel({ books, quote, jobNumber, shop, closed }: Props) {
  const { account, payments } = books
  const { currency } = shop
  const { locale } = wordsFor(shop.words)
  const show = (amount: Money) => formatMoney(amount, currency, locale)
  const { balance, paid, total } = account
  const back = balance < 0 && (total !== null || closed)
  const takes = balance > 0 || total === null
  const deposit = quote ? totalsOf(quote).deposit : null
  return (
    <section className="panel stack" aria-labelledby="money">
      <h2 id="money">Money</h2>
      <table>
        <tbody>
          <Line label={totalLabel(quote, total, closed)} amount={total === null ? 'none agreed' : show(total)} />
          {deposit !== null && deposit > 0 && !closed && <Line label="Deposit asked for" amount={show(deposit)} />}
          {payments.map((payment) => (
            <Line
              key={payment.id}
              label={`${paymentText(payment)}, ${formatInstant(payment.at, shop.timeZone, locale)}, ${payment.takenBy}`}
              amount={show(payment.amount)}
            />
          ))}
          <Line label="Paid" amount={show(paid)} />
        </tbody>
        <tfoot>
          <Line
            label={balance < 0 ? 'Paid too much, or on account' : 'Balance'}
            amount={show(money(Math.abs(balance)))}
          />
        </tfoot>
      </table>
      {(takes || back) && !(closed && balance === 0) && (
        <PaymentForm
          key={payments.length}
          action={submitPayment.bind(null, { jobNumber, back })}
          currency={currency}
          back={back}
          once={onceMark()}
          amount={balance === 0 || total === null ? '' : exactDecimal(money(Math.abs(balance)), minorDigits(currency))}
        />
      )}
    </section>
  )
}

function totalLabel(quote: Quote | null, total: Money | null, closed: boolean): string {
  if (quote) return `Total of quote ${quoteTitle(quote)}`
  return total !== null && closed ? 'Charged' : 'Total'
}

const Line = ({ label, amount }: { label: string; amount: string }) => (
  <tr>
    <th scope="row">{label}</th>
    <td className="num">{amount}</td>
  </tr>
)
