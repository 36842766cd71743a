/**
 * Takes back an answer that was written down by mistake, while no work has
 * followed it. The quote waits for its answer again, with its tubes held to its
 * last day; a tube that somebody else has taken meanwhile stays theirs, and the
 * next answer will name it.
 */
import { endOfDay } from '@/lib/domain/calendar'
import type { Job } from '@/lib/domain/job/job'
import { moveJob } from '@/lib/domain/job/job-state'
import { withoutDeclined } from '@/lib/domain/quote/declined'
import { type Quote, quoteTitle, tubeIdsOf } from '@/lib/domain/quote/quote'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { inTransaction, type Tx } from '@/lib/store/database'
import { countWorkSince, listQuotes, saveQuote } from '@/lib/store/quote'
import { listTubesById, setHold } from '@/lib/store/tube'
import { moveJobInside } from '@/lib/workflow/counter/keep-job'
import { refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { noteSetAside, partsOn } from '@/lib/workflow/work/draw-parts'
import { requireLatest, requireOpenJob } from './quote-draft'
import { noteQuote, noteTubes } from './quote-notes'

export type AnswerToUndo = { readonly jobNumber: string; readonly version: number }

/** Gives the marks of tubes that could not be held again. */
export function undoAnswer(
  step: Step,
  shop: Shop,
  { jobNumber, version }: AnswerToUndo,
): Promise<Result<readonly string[], StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const job = await requireOpenJob(tx, jobNumber)
      const quote = await requireLatest(tx, job)
      if (quote.version !== version) refuse(await stale(tx, 'quote', quote.id, version))
      if (quote.answer === '' || quote.state !== quote.answer || !quote.answeredAt)
        refuse({ code: 'quote-not-answered', quote: quoteTitle(quote), state: quote.state })
      const work = await countWorkSince(job.id, quote.id, quote.answeredAt, tx)
      if (work.fitted + work.done > 0) refuse({ code: 'work-begun', ...work })
      return undo(tx, step, shop, job, quote)
    }),
  )
}

const UNANSWERED = {
  state: 'sent',
  answer: '',
  answeredAt: null,
  answerBy: '',
  answerHow: '',
  answerTakenBy: '',
} as const

async function undo(tx: Tx, step: Step, shop: Shop, job: Job, quote: Quote): Promise<readonly string[]> {
  if (!(await saveQuote(tx, quote.id, quote.version, UNANSWERED)))
    refuse(await stale(tx, 'quote', quote.id, quote.version))
  const until = endOfDay(quote.validUntil, shop.timeZone)
  const lost = await holdAgain(tx, step, { job, quote, hold: 'held', until })
  const earlier = quote.answer === 'accepted' ? await restoreEarlier(tx, step, job, quote) : null
  if (quote.answer === 'accepted')
    await noteSetAside(tx, step, job, [...partsOn(quote), ...partsOn(earlier)], 'an answer was taken back')
  const gone = lost.length > 0 ? `; not held any more: ${lost.join(', ')}` : ''
  const did = `Answer on quote ${quoteTitle(quote)} taken back: ${quote.answer} by ${quote.answerBy}, ${quote.answerHow}, taken by ${quote.answerTakenBy}${gone}`
  await noteQuote(tx, step, { quote, did, version: quote.version + 1 })
  const to = moveJob(job.state, 'waiting-for-answer').ok ? 'waiting-for-answer' : job.state
  const declinedWork = withoutDeclined(job.declinedWork, quote)
  await moveJobInside(tx, step, job, to, `Answer on quote ${quoteTitle(quote)} taken back`, { declinedWork })
  return lost
}

type HoldAgain = {
  readonly job: Job
  readonly quote: Quote
  readonly hold: 'held' | 'reserved'
  readonly until: Date | null
}

/** One by one: what is free is held, the rest is told. */
async function holdAgain(tx: Tx, step: Step, { job, quote, hold, until }: HoldAgain): Promise<string[]> {
  const lost: string[] = []
  for (const { tube } of await listTubesById(tubeIdsOf(quote), tx)) {
    const order = { hold, jobId: job.id, quoteId: quote.id, until, now: step.now }
    if (await setHold(tx, [tube.id], order))
      await noteTubes(
        tx,
        step,
        [tube.id],
        `Answer taken back: ${hold} for job ${job.number} by quote ${quoteTitle(quote)}`,
      )
    else lost.push(tube.mark)
  }
  return lost
}

/** A yes to an earlier revision, which the answer now taken back had replaced, stands again. */
async function restoreEarlier(tx: Tx, step: Step, job: Job, quote: Quote): Promise<Quote | null> {
  const earlier = (await listQuotes(job.id, tx)).find((each) => each.id !== quote.id && each.answer === 'accepted')
  if (!earlier) return null
  if (!(await saveQuote(tx, earlier.id, earlier.version, { state: 'accepted' })))
    refuse(await stale(tx, 'quote', earlier.id, earlier.version))
  await holdAgain(tx, step, { job, quote: earlier, hold: 'reserved', until: null })
  await noteQuote(tx, step, {
    quote: earlier,
    did: `Quote ${quoteTitle(earlier)} stands as accepted again`,
    version: earlier.version + 1,
  })
  return earlier
}
