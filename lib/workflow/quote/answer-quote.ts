/**
 * Writes down what the customer answered. A yes reserves the very tubes of the
 * quote without an end, all or none: if one was taken meanwhile, nothing is
 * saved. A no lets them go and puts the lines into the job's declined work.
 */
import { dayInZone, endOfDay } from '@/lib/domain/calendar'
import type { Job } from '@/lib/domain/job/job'
import type { JobState } from '@/lib/domain/job/job-state'
import type { Money } from '@/lib/domain/money'
import { type AfterYes, type AnswerWay, answerHowText } from '@/lib/domain/quote/answer'
import { declinedText } from '@/lib/domain/quote/declined'
import { asAgreed } from '@/lib/domain/quote/exchanged'
import { type Quote, type QuoteLine, quoteTitle, stateNow, totalsOf, tubeIdsOf } from '@/lib/domain/quote/quote'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import { inTransaction, type Tx } from '@/lib/store/database'
import { createPayment } from '@/lib/store/payment'
import { findAcceptedQuote, saveLineDone, saveQuote } from '@/lib/store/quote'
import { releaseHold } from '@/lib/store/tube'
import { moveJobInside } from '@/lib/workflow/counter/keep-job'
import { refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { holdTubes } from '@/lib/workflow/tubes/hold-tubes'
import { noteSetAside, partsOn } from '@/lib/workflow/work/draw-parts'
import { requireLatest, requireOpenJob } from './quote-draft'
import { dayIn, moneyIn, noteQuote, noteTubes } from './quote-notes'

export type Deposit = { readonly amount: Money; readonly how: string }

type AnswerGiven = {
  readonly jobNumber: string
  readonly version: number
  /** Who answered. */
  readonly by: string
  readonly way: AnswerWay
  /** The number called, the address written from; may be empty. */
  readonly detail: string
  /** When they answered; not later than now. */
  readonly at: Date
}

export type AnswerToKeep = AnswerGiven &
  (
    | { readonly answer: 'accepted'; readonly moveTo: AfterYes; readonly deposit: Deposit | null }
    | { readonly answer: 'declined' }
  )

export function answerQuote(step: Step, shop: Shop, input: AnswerToKeep): Promise<Result<null, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const job = await requireOpenJob(tx, input.jobNumber)
      const quote = await requireLatest(tx, job)
      if (quote.version !== input.version) refuse(await stale(tx, 'quote', quote.id, input.version))
      refuseUnfit(step, shop, quote, input)
      if (input.answer === 'accepted') await accept(tx, step, shop, { job, quote, input })
      else await decline(tx, step, shop, { job, quote, input })
      return null
    }),
  )
}

const MINUTE = 60_000

function refuseUnfit({ now }: Step, shop: Shop, quote: Quote, { at, answer }: AnswerToKeep): void {
  const named = quoteTitle(quote)
  if (quote.state === 'draft') refuse({ code: 'quote-not-out', quote: named })
  if (quote.state !== 'sent')
    refuse({ code: 'quote-not-waiting', quote: named, state: stateNow(quote, now, shop.timeZone) })
  // An answer is noted to the minute; the quote went out within one.
  if (quote.sentAt && at.getTime() < quote.sentAt.getTime() - MINUTE) refuse({ code: 'answer-before-quote' })
  if (at > now) refuse({ code: 'answer-ahead' })
  const over = at > endOfDay(quote.validUntil, shop.timeZone)
  if (answer === 'accepted' && over) refuse({ code: 'validity-over', quote: named, validUntil: quote.validUntil })
}

type Answered<Answer> = { readonly job: Job; readonly quote: Quote; readonly input: Answer }
type Yes = Extract<AnswerToKeep, { answer: 'accepted' }>
type No = Extract<AnswerToKeep, { answer: 'declined' }>

async function saveAnswer(
  tx: Tx,
  { actor }: Step,
  quote: Quote,
  { answer, at, by, way, detail }: AnswerToKeep,
): Promise<void> {
  const how = answerHowText(way, detail)
  const change = {
    state: answer,
    answer,
    answeredAt: at,
    answerBy: by,
    answerHow: how,
    answerTakenBy: actor.name,
  } as const
  if (!(await saveQuote(tx, quote.id, quote.version, change))) refuse(await stale(tx, 'quote', quote.id, quote.version))
}

const saidBy = ({ by, way, detail }: AnswerToKeep) => `by ${by}, ${answerHowText(way, detail)}`

async function accept(tx: Tx, step: Step, shop: Shop, { job, quote, input }: Answered<Yes>): Promise<void> {
  const named = quoteTitle(quote)
  const reserved = await holdTubes(tx, step, { quote, job, hold: 'reserved', until: null })
  const earlier = await findAcceptedQuote(job.id, tx)
  if (earlier) await takeOver(tx, step, quote, earlier)
  await saveAnswer(tx, step, quote, input)
  const did = `Quote ${named} over ${moneyIn(shop, totalsOf(asAgreed(quote)).total)} accepted ${saidBy(input)}`
  await noteQuote(tx, step, { quote, did, version: quote.version + 1 })
  await noteTubes(tx, step, reserved, `Reserved for job ${job.number} by accepted quote ${named}`)
  await noteSetAside(tx, step, job, [...partsOn(earlier), ...partsOn(quote)], `accepted quote ${named}`)
  if (input.deposit) await takeDeposit(tx, step, shop, { job, quote, deposit: input.deposit })
  await moveJobInside(tx, step, job, input.moveTo, `Quote ${named} accepted`)
}

/** The yes to an earlier revision is replaced by this one: what was done stays done, what is no longer listed is let go. */
async function takeOver(tx: Tx, step: Step, quote: Quote, earlier: Quote): Promise<void> {
  const free = [...quote.lines]
  for (const done of earlier.lines) {
    if (!done.doneAt) continue
    const at = free.findIndex((line) => line.doneAt === null && isSameWork(line, done))
    const [same] = at < 0 ? [] : free.splice(at, 1)
    if (same) await saveLineDone(tx, same.id, { at: done.doneAt, by: done.doneBy })
  }
  await releaseHold(tx, earlier.id)
  if (!(await saveQuote(tx, earlier.id, earlier.version, { state: 'superseded' })))
    refuse(await stale(tx, 'quote', earlier.id, earlier.version))
  const did = `Quote ${quoteTitle(earlier)} is superseded by ${quoteTitle(quote)}`
  await noteQuote(tx, step, { quote: earlier, did, version: earlier.version + 1 })
}

/** Of another number of pieces out of the drawer not all are used yet, or too many were. */
const isSameWork = (a: QuoteLine, b: QuoteLine): boolean =>
  a.kind === b.kind &&
  // A tube exchanged since is told by its own text in the revision.
  (a.tubeId !== null || a.text === b.text) &&
  a.tubeId === b.tubeId &&
  a.partId === b.partId &&
  (a.partId === null || a.thousandths === b.thousandths)

type DepositTaken = { readonly job: Job; readonly quote: Quote; readonly deposit: Deposit }

async function takeDeposit(tx: Tx, step: Step, shop: Shop, { job, quote, deposit }: DepositTaken): Promise<void> {
  const { amount, how } = deposit
  await createPayment(tx, job.id, { amount, kind: 'deposit', how, at: step.now, takenBy: step.actor.name })
  const did = `Deposit of ${moneyIn(shop, amount)} taken${how && `, ${how}`}`
  await noteQuote(tx, step, { quote, did, version: quote.version + 1 })
}

async function decline(tx: Tx, step: Step, shop: Shop, { job, quote, input }: Answered<No>): Promise<void> {
  const named = quoteTitle(quote)
  await saveAnswer(tx, step, quote, input)
  await releaseHold(tx, quote.id)
  const did = `Quote ${named} over ${moneyIn(shop, totalsOf(asAgreed(quote)).total)} declined ${saidBy(input)}${freed(quote, shop)}`
  await noteQuote(tx, step, { quote, did, version: quote.version + 1 })
  const said = declinedText(quote, dayIn(shop, dayInZone(input.at, shop.timeZone)), input.by)
  const declinedWork = job.declinedWork === '' ? said : `${job.declinedWork}\n${said}`
  await moveJobInside(tx, step, job, afterNo(job.state), `Quote ${named} declined`, { declinedWork })
}

const freed = (quote: Quote, shop: Shop): string =>
  tubeIdsOf(quote).length === 0 ? '' : `; its ${wordsFor(shop.words).tubes} are free again`

/** Nobody is waited for any more: the amplifier is to be closed up, or quoted anew. */
const afterNo = (state: JobState): JobState => (state === 'waiting-for-answer' ? 'on-bench' : state)
