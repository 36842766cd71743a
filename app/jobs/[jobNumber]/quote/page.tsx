import type { Metadata } from 'next'
import { ActForm } from '@/app/_components/form/act-form'
import { startKey } from '@/app/_components/form/after-save'
import { isClosed } from '@/lib/domain/job/job-state'
import { quoteTitle, stateNow } from '@/lib/domain/quote/quote'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listMailsOfJob } from '@/lib/store/mail'
import { listPapers } from '@/lib/store/paper'
import { listPayments } from '@/lib/store/payment'
import { listQuotes } from '@/lib/store/quote'
import { partState } from '../part-state'
import { requireHead } from '../require-head'
import { submitBegin } from './actions'
import { DidNote } from './did-note'
import { DraftQuote } from './draft-quote'
import { EarlierQuotes } from './earlier-quotes'
import { IssuedQuote } from './issued-quote'
import { paperOf } from './paper-of'
import { QuoteStateTag } from './quote-state-tag'

export const metadata: Metadata = { title: 'Quote' }

export default async function QuotePage({ params, searchParams }: PageProps<'/jobs/[jobNumber]/quote'>) {
  const { shop } = await requireUser()
  const head = await requireHead(params)
  const { job } = head
  const now = new Date()
  const [quotes, papers, mails, payments] = await Promise.all([
    listQuotes(job.id),
    listPapers(job.id, 'quote'),
    listMailsOfJob(job.id),
    listPayments(job.id),
  ])
  const [quote, ...earlier] = quotes
  if (!quote)
    return (
      <section className="panel stack">
        <h2>No quote yet</h2>
        <p className="soft">It takes the next number and may be written in several sittings.</p>
        {!isClosed(job.state) && <ActForm action={submitBegin.bind(null, job.number)}>Write a quote</ActForm>}
      </section>
    )
  const paper = paperOf(quote, papers)
  const { standings } = await partState(job.id, isClosed(job.state) || quote.state === 'declined' ? null : quote)
  const standing = earlier.find(({ state }) => state === 'accepted')
  const query = await searchParams
  const { did } = query
  return (
    <>
      <div className="row spread">
        <h2>Quote {quoteTitle(quote)}</h2>
        <QuoteStateTag state={stateNow(quote, now, shop.timeZone)} />
      </div>
      {standing && (
        <p className="form-message">
          {quoteTitle(standing)} is accepted and stands until the customer has said yes to this one.
        </p>
      )}
      <DidNote did={typeof did === 'string' ? did : ''} paperId={paper?.id ?? null} words={wordsFor(shop.words)} />
      {quote.state === 'draft' ? (
        <DraftQuote head={head} quote={quote} shop={shop} formKey={startKey(query)} />
      ) : (
        <IssuedQuote
          {...{ head, quote, shop, now, payments, standings }}
          paperId={paper?.id ?? null}
          mails={mails.filter(({ paperId }) => paperId === paper?.id)}
        />
      )}
      <EarlierQuotes quotes={earlier} papers={papers} shop={shop} now={now} />
    </>
  )
}
