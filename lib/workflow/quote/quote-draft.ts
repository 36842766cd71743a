/** The draft that a step works on: found, begun, or refused because the quote is out of the shop's hands. */
import { addDays, dayInZone } from '@/lib/domain/calendar'
import type { Job } from '@/lib/domain/job/job'
import { isClosed } from '@/lib/domain/job/job-state'
import { type Quote, quoteTitle } from '@/lib/domain/quote/quote'
import type { Shop } from '@/lib/domain/shop/shop'
import type { Tx } from '@/lib/store/database'
import { createQuote, findLatestQuote } from '@/lib/store/quote'
import { requireJob } from '@/lib/workflow/counter/keep-job'
import { refuse, type Step } from '@/lib/workflow/step/step'
import { noteQuote } from './quote-notes'

export async function requireOpenJob(tx: Tx, number: string): Promise<Job> {
  const job = await requireJob(tx, number)
  return isClosed(job.state) ? refuse({ code: 'job-closed', state: job.state }) : job
}

export async function requireLatest(tx: Tx, job: Job): Promise<Quote> {
  return (await findLatestQuote(job.id, tx)) ?? refuse({ code: 'not-found', what: `A quote of job ${job.number}` })
}

export function asDraft(quote: Quote): Quote {
  return quote.state === 'draft'
    ? quote
    : refuse({ code: 'quote-not-draft', quote: quoteTitle(quote), state: quote.state })
}

export async function beginDraft(tx: Tx, step: Step, shop: Shop, job: Job): Promise<Quote> {
  const { taxName, taxMilliPercent, depositPercent } = shop
  const validUntil = addDays(dayInZone(step.now, shop.timeZone), shop.quoteValidDays)
  const terms = { taxName, taxMilliPercent, depositPercent, validUntil, note: '' }
  const quote = await createQuote(tx, {
    jobId: job.id,
    createdAt: step.now,
    revises: null,
    matches: [],
    lines: [],
    ...terms,
  })
  await noteQuote(tx, step, { quote, did: `Quote ${quote.number} begun`, version: quote.version })
  return quote
}

export async function draftOf(tx: Tx, step: Step, shop: Shop, job: Job): Promise<Quote> {
  const latest = await findLatestQuote(job.id, tx)
  return latest ? asDraft(latest) : beginDraft(tx, step, shop, job)
}
