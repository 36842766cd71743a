/** By whose word the work is done, and the paper for it. */
import Link from 'next/link'
import { formatInstant } from '@/lib/domain/calendar'
import type { Job } from '@/lib/domain/job/job'
import { isClosed } from '@/lib/domain/job/job-state'
import { formatMoney } from '@/lib/domain/money'
import { asAgreed } from '@/lib/domain/quote/exchanged'
import { type Quote, quoteStateWord, quoteTitle, totalsOf } from '@/lib/domain/quote/quote'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import { PressForm } from '../press-form'
import { pressPrint } from './actions'

type Props = { readonly accepted: Quote | null; readonly latest: Quote | null; readonly job: Job; readonly shop: Shop }

export function OrderedQuote({ accepted, latest, job, shop }: Props) {
  return (
    <section className="row spread" aria-labelledby="order">
      <div>
        <h2 id="order">Work order</h2>
        <p className="soft">
          {accepted ? acceptedText(accepted, shop) : <Unanswered latest={latest} jobNumber={job.number} />}
        </p>
      </div>
      {!isClosed(job.state) && <PressForm action={pressPrint.bind(null, job.number)}>Print work order</PressForm>}
    </section>
  )
}

function acceptedText(quote: Quote, shop: Shop): string {
  const { locale } = wordsFor(shop.words)
  const total = formatMoney(totalsOf(asAgreed(quote)).total, shop.currency, locale)
  const when = quote.answeredAt ? `, ${formatInstant(quote.answeredAt, shop.timeZone, locale)}` : ''
  return `By quote ${quoteTitle(quote)} over ${total}, accepted by ${quote.answerBy || 'the customer'}, ${quote.answerHow}${when}; taken by ${quote.answerTakenBy}.`
}

function Unanswered({ latest, jobNumber }: { latest: Quote | null; jobNumber: string }) {
  const stands = latest ? `Quote ${quoteTitle(latest)} is ${quoteStateWord(latest.state)}.` : 'There is no quote yet.'
  return (
    <>
      No quote is accepted, so a print now is one for finding the fault.{' '}
      <Link href={`/jobs/${jobNumber}/quote`}>{stands}</Link>
    </>
  )
}
