/** What is held changes hands with an exchange: the one that comes is held as the one that goes was, and that is free again. */
import { endOfDay } from '@/lib/domain/calendar'
import type { Job } from '@/lib/domain/job/job'
import { type Quote, quoteTitle } from '@/lib/domain/quote/quote'
import type { Shop } from '@/lib/domain/shop/shop'
import { activeHold, type Tube } from '@/lib/domain/stock/tube'
import type { Tx } from '@/lib/store/database'
import { type NewHold, releaseTube, setHold } from '@/lib/store/tube'
import { noteTubes } from '@/lib/workflow/quote/quote-notes'
import { refuse, type Step } from '@/lib/workflow/step/step'
import type { Exchange } from './tube-exchange'

type Hands = {
  readonly job: Job
  readonly quote: Quote
  /** It and every later revision that named the tube. */
  readonly targets: readonly Quote[]
  readonly exchange: Exchange
}

export async function changeHands(
  tx: Tx,
  step: Step,
  shop: Shop,
  { job, quote, targets, exchange }: Hands,
): Promise<void> {
  const { position } = exchange
  const [out, into] = [exchange.out.tube, exchange.into.tube]
  const hold = holdOf(quote, out, step, shop)
  let free = false
  for (const { id } of targets) free = (await releaseTube(tx, out.id, id)) || free
  // What an accepted quote has reserved for this very job is not weakened to a hold.
  const settled = hold?.hold === 'held' && activeHold(into, step.now) === 'reserved'
  if (hold && !settled && !(await setHold(tx, [into.id], { ...hold, jobId: job.id, quoteId: quote.id, now: step.now })))
    refuse({ code: 'not-found', what: `${into.mark} in stock` })
  const where = `${position} of job ${job.number}, quote ${quoteTitle(quote)}`
  await noteTubes(tx, step, [out.id], `Exchanged for ${into.mark} in ${where}${free ? ': free again' : ''}`)
  await noteTubes(tx, step, [into.id], `In place of ${out.mark} in ${where}${hold ? `: ${hold.hold}` : ''}`)
}

/** A draft holds only what came to it from a quote that was out. */
function holdOf(quote: Quote, out: Tube, { now }: Step, shop: Shop): Pick<NewHold, 'hold' | 'until'> | null {
  if (quote.state === 'accepted') return { hold: 'reserved', until: null }
  if (quote.state === 'sent') return { hold: 'held', until: endOfDay(quote.validUntil, shop.timeZone) }
  const hold = out.heldByQuoteId === quote.id ? activeHold(out, now) : ''
  return hold === '' ? null : { hold, until: out.heldUntil }
}
