/** A quote that is out: what it says, what was answered, and what can be done with it. */
import { Fragment } from 'react'
import { ActForm } from '@/app/_components/form/act-form'
import { formatDay, formatInstant } from '@/lib/domain/calendar'
import { type Payment, paymentText } from '@/lib/domain/job/account'
import { isClosed } from '@/lib/domain/job/job-state'
import { formatMoney } from '@/lib/domain/money'
import type { Mail } from '@/lib/domain/quote/mail'
import { type Quote, stateNow, totalsOf } from '@/lib/domain/quote/quote'
import type { Shop } from '@/lib/domain/shop/shop'
import type { PartStanding } from '@/lib/domain/stock/part-standing'
import { wordsFor } from '@/lib/domain/words'
import type { JobHead } from '@/lib/store/job-head'
import { submitAnswer, submitRevise, submitUndo } from './actions'
import { AnswerForm } from './answer-form'
import { answerValues } from './answer-schema'
import { ExchangedSince } from './exchanged-since'
import { MailNote } from './mail-note'
import { QuoteFigures } from './quote-figures'
import { QuoteLines } from './quote-lines'

type Props = {
  readonly head: JobHead
  readonly quote: Quote
  readonly shop: Shop
  readonly paperId: string | null
  readonly mails: readonly Mail[]
  readonly payments: readonly Payment[]
  readonly standings: ReadonlyMap<string, PartStanding>
  readonly now: Date
}

export function IssuedQuote({ head, quote, shop, paperId, mails, payments, standings, now }: Props) {
  const { job, customer } = head
  const words = wordsFor(shop.words)
  const totals = totalsOf(quote)
  const state = stateNow(quote, now, shop.timeZone)
  const terms = {
    currency: shop.currency,
    taxName: quote.taxName,
    taxMilliPercent: quote.taxMilliPercent,
    spendingLimit: job.spendingLimit,
  }
  return (
    <div className="columns">
      <div className="stack">
        {quote.state === 'sent' && <Answer {...{ head, quote, shop, now, lapsed: state === 'lapsed' }} />}
        {quote.answer !== '' && <Answered quote={quote} shop={shop} jobNumber={job.number} payments={payments} />}
        <section className="panel" aria-label="Lines">
          <div className="panel-head">
            <h2>What was quoted</h2>
            {paperId && <a href={`/papers/${paperId}`}>The quote as PDF</a>}
          </div>
          <QuoteLines quote={quote} currency={shop.currency} words={words} standings={standings} />
          <ExchangedSince quote={quote} />
          {quote.note !== '' && <p style={{ whiteSpace: 'pre-line' }}>Note to the customer: {quote.note}</p>}
        </section>
      </div>
      <div className="stack">
        <section className="panel" aria-label="Sums">
          <h2>What it comes to</h2>
          <QuoteFigures totals={totals} terms={terms} words={words} />
          <p className="soft">Valid until the end of {formatDay(quote.validUntil, words.locale)}.</p>
        </section>
        <MailNote mails={mails} shop={shop} jobNumber={job.number} address={customer.email} open={state === 'sent'} />
        {!isClosed(job.state) && <Revise quote={quote} jobNumber={job.number} />}
      </div>
    </div>
  )
}

function Answer({
  head,
  quote,
  shop,
  now,
  lapsed,
}: {
  head: JobHead
  quote: Quote
  shop: Shop
  now: Date
  lapsed: boolean
}) {
  const { job, customer } = head
  const { locale } = wordsFor(shop.words)
  const { total, deposit } = totalsOf(quote)
  const show = (amount: typeof total) => formatMoney(amount, shop.currency, locale)
  const start = { version: quote.version, customerName: customer.name, phone: customer.phone, now, zone: shop.timeZone }
  return (
    <section className="panel stack" aria-labelledby="answer">
      <h2 id="answer">The customer’s answer</h2>
      {lapsed && (
        <p className="caution">
          <strong>The last day is over</strong> ({formatDay(quote.validUntil, locale)}): a yes given since then needs a
          revision, and the {wordsFor(shop.words).tubes} are no longer held. A yes given in time, or a no, can still be
          written down.
        </p>
      )}
      <AnswerForm
        action={submitAnswer.bind(null, job.number)}
        values={answerValues(start)}
        currency={shop.currency}
        total={show(total)}
        depositDue={deposit > 0 ? show(deposit) : ''}
      />
    </section>
  )
}

const UNDO = {
  summary: 'Written down by mistake?',
  note: 'The quote then waits for its answer again. A deposit that was taken stays written down; give it back on the job’s account.',
}

type AnsweredProps = {
  readonly quote: Quote
  readonly shop: Shop
  readonly jobNumber: string
  readonly payments: readonly Payment[]
}

function Answered({ quote, shop, jobNumber, payments }: AnsweredProps) {
  const { locale } = wordsFor(shop.words)
  const at = quote.answeredAt && formatInstant(quote.answeredAt, shop.timeZone, locale)
  return (
    <section className="panel stack" aria-labelledby="answered">
      <h2 id="answered">{quote.answer === 'accepted' ? 'Accepted' : 'Declined'}</h2>
      <dl className="facts">
        <dt>Who answered</dt>
        <dd>{quote.answerBy}</dd>
        <dt>How</dt>
        <dd>{quote.answerHow}</dd>
        <dt>When</dt>
        <dd>{at}</dd>
        <dt>Written down by</dt>
        <dd>{quote.answerTakenBy}</dd>
        {payments.map((payment) => (
          <Fragment key={payment.id}>
            <dt>{paymentText(payment)}</dt>
            <dd>{formatMoney(payment.amount, shop.currency, locale)}</dd>
          </Fragment>
        ))}
      </dl>
      {quote.state === quote.answer && (
        <ActForm
          action={submitUndo.bind(null, jobNumber)}
          values={{ version: String(quote.version) }}
          quiet
          fold={UNDO}
        >
          Take this answer back
        </ActForm>
      )}
    </section>
  )
}

function Revise({ quote, jobNumber }: { quote: Quote; jobNumber: string }) {
  const text =
    quote.state === 'accepted'
      ? 'For more work: what was accepted stands until the customer has said yes to the revision.'
      : quote.state === 'sent'
        ? 'This quote is then superseded and can no longer be accepted.'
        : 'Begins from these lines, at today’s tax.'
  return (
    <section className="panel stack" aria-label="Revise">
      <h2>Revise</h2>
      <p className="soft">{text}</p>
      <ActForm action={submitRevise.bind(null, jobNumber)} quiet>
        Begin revision {quote.revision + 1}
      </ActForm>
    </section>
  )
}
