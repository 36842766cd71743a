/** The draft's form with what it needs from the records. */

import type { MatchingFormat } from '@/lib/domain/matching/matching-text'
import { matchStatementText } from '@/lib/domain/matching/statement-text'
import { formatMoney, minorDigits } from '@/lib/domain/money'
import type { Quote } from '@/lib/domain/quote/quote'
import type { Shop } from '@/lib/domain/shop/shop'
import { partName, type StockedPart } from '@/lib/domain/stock/part'
import { thereFor } from '@/lib/domain/stock/part-standing'
import { wordsFor } from '@/lib/domain/words'
import type { JobHead } from '@/lib/store/job-head'
import { listOperations, type Operation } from '@/lib/store/operation'
import { listDrawnBy, listStockedParts } from '@/lib/store/part-draw'
import { findLatestReadings } from '@/lib/store/reading-set'
import { submitQuote } from './actions'
import { DraftForm } from './draft-form'
import type { PartChoice } from './drawn-note'
import { quoteValues } from './quote-schema'

function operationText({ name, milliHours, flatPrice }: Operation, show: MatchingFormat['formatMoney']): string {
  return flatPrice === null ? `${name}, ${(milliHours ?? 0) / 1000} h` : `${name}, ${show(flatPrice)} flat`
}

function partChoice(part: StockedPart, there: number, show: MatchingFormat['formatMoney']): PartChoice {
  const name = partName(part)
  return { id: part.id, name, location: part.location, there, option: `${name}: ${show(part.price)}, ${there} free` }
}

type Props = {
  readonly head: JobHead
  readonly quote: Quote
  readonly shop: Shop
  /** Another after every save of one's own: the form then starts anew. */
  readonly formKey: string
}

export async function DraftQuote({ head, quote, shop, formKey }: Props) {
  const { job, customer } = head
  const words = wordsFor(shop.words)
  const format: MatchingFormat = { words, formatMoney: (amount) => formatMoney(amount, shop.currency, words.locale) }
  const [operations, readings, parts, drawn] = await Promise.all([
    listOperations(),
    findLatestReadings(job.id, 'before'),
    listStockedParts(),
    listDrawnBy(job.id),
  ])
  return (
    <>
      {quote.matches.length > 0 && (
        <section className="panel" aria-label="Match">
          {quote.matches.map(({ group, marks, statement }) => (
            <p key={group}>
              <strong>{marks.join(' with ')}</strong>: {matchStatementText(statement, format)}
              {(statement.match === 'outside' || statement.match === 'uncertain') && ' It is not printed as a match.'}
            </p>
          ))}
        </section>
      )}
      <DraftForm
        key={`${quote.id} ${formKey}`}
        action={submitQuote.bind(null, job.number)}
        jobNumber={job.number}
        values={quoteValues(quote, job.findings, minorDigits(shop.currency))}
        terms={{
          currency: shop.currency,
          taxName: quote.taxName,
          taxMilliPercent: quote.taxMilliPercent,
          spendingLimit: job.spendingLimit,
        }}
        wordSet={shop.words}
        operations={operations.map((operation) => ({
          value: operation.id,
          text: operationText(operation, format.formatMoney),
        }))}
        parts={parts.map((part) => partChoice(part, thereFor(part, { jobId: job.id, drawn }), format.formatMoney))}
        hasReadings={readings !== null}
        mailTo={customer.email}
        customerName={customer.name}
      />
    </>
  )
}
