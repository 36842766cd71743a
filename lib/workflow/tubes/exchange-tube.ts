/**
 * Exchanges one tube of a job for another from stock, in one step: the line of the quote, what is
 * held, and the stories of both tubes and of the job change together, or nothing does.
 *
 * The line of a quote that is out keeps the text and the price that were quoted; which tube is
 * meant is what changes. Everything the page showed before the press is looked at again first.
 */
import type { Job } from '@/lib/domain/job/job'
import { type Quote, type QuoteLine, quoteTitle, stateNow } from '@/lib/domain/quote/quote'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { inTransaction, type Tx } from '@/lib/store/database'
import { findQuote, listQuotes } from '@/lib/store/quote'
import { listTubesById } from '@/lib/store/tube'
import { requireOpenJob } from '@/lib/workflow/quote/quote-draft'
import { refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { requireWork } from '@/lib/workflow/work/do-work'
import { refuseChanged, refuseSeated, refuseUnfit } from './exchange-checks'
import { changeHands } from './exchange-hands'
import { exchangeLine } from './exchange-line'
import type { Exchange, TubeExchange } from './tube-exchange'

/** Gives the marks of both. */
export function exchangeTube(
  step: Step,
  shop: Shop,
  input: TubeExchange,
): Promise<Result<{ readonly out: string; readonly into: string }, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const job = await requireOpenJob(tx, input.jobNumber)
      const quote = await requireLive(tx, step, shop, job, input)
      const line = lineAt(quote, input.position)
      const exchange = await bothTubes(tx, input, line)
      await refuseSeated(tx, job, exchange)
      await refuseChanged(tx, { step, shop, job }, input, exchange)
      await refuseUnfit(tx, { step, shop, job }, input, exchange)
      const targets = [quote, ...(await laterNaming(tx, job, quote, exchange))]
      for (const target of targets) await exchangeLine(tx, step, shop, { job, quote: target, exchange, input })
      await changeHands(tx, step, shop, { job, quote, targets, exchange })
      return { out: exchange.out.tube.mark, into: exchange.into.tube.mark }
    }),
  )
}

/** A draft, a quote that waits for its answer in time, or the accepted one: as it was when the page was opened. */
async function requireLive(tx: Tx, step: Step, shop: Shop, job: Job, input: TubeExchange): Promise<Quote> {
  const quote = await findQuote(input.quoteId, tx)
  if (quote?.jobId !== job.id) return refuse({ code: 'not-found', what: `This quote of job ${job.number}` })
  const named = quoteTitle(quote)
  const state = stateNow(quote, step.now, shop.timeZone)
  if (state === 'lapsed') refuse({ code: 'validity-over', quote: named, validUntil: quote.validUntil })
  if (state === 'declined' || state === 'superseded') refuse({ code: 'quote-not-waiting', quote: named, state })
  if (quote.version !== input.version) refuse(await stale(tx, 'quote', quote.id, input.version))
  // What is ordered is the bench's; before that it is a choice like another.
  if (state === 'accepted') await requireWork(tx, step, job.number)
  return quote
}

function lineAt(quote: Quote, position: string): QuoteLine {
  const line = quote.lines.find(({ kind, socketPosition }) => kind === 'tube' && socketPosition === position)
  return line ?? refuse({ code: 'no-tube-quoted', quote: quoteTitle(quote), position })
}

async function bothTubes(tx: Tx, { out, into, position }: TubeExchange, line: QuoteLine): Promise<Exchange> {
  if (line.tubeId !== out.tubeId) refuse({ code: 'not-found', what: `${out.mark} for ${position} on this quote` })
  if (out.tubeId === into.tubeId) refuse({ code: 'exchange-for-itself', mark: into.mark, position })
  const stocked = await listTubesById([out.tubeId, into.tubeId], tx)
  const of = ({ tubeId, mark }: { readonly tubeId: string; readonly mark: string }) =>
    stocked.find(({ tube }) => tube.id === tubeId) ?? refuse({ code: 'not-found', what: mark })
  return { out: of(out), into: of(into), position }
}

/** A revision begun since the accepted quote would bring the old tube back with its yes. */
async function laterNaming(tx: Tx, job: Job, quote: Quote, { out, position }: Exchange): Promise<Quote[]> {
  if (quote.state !== 'accepted') return []
  const others = await listQuotes(job.id, tx)
  return others.filter(
    ({ id, state, lines }) =>
      id !== quote.id &&
      (state === 'draft' || state === 'sent') &&
      lines.some(({ tubeId, socketPosition }) => tubeId === out.tube.id && socketPosition === position),
  )
}
