/**
 * Sends a draft quote, or prints it to be handed over. In one transaction: the
 * paper is frozen, its tubes are held until the quote's last day is over, the
 * mail is written into the outbox, the job waits for its answer. Only then is
 * the mail handed to the server: if that fails, or the process dies, it is still
 * in the outbox.
 */
import { quoteMail } from '@/lib/documents/mail-body'
import { type QuoteFacts, quoteNumber, quotePaper } from '@/lib/documents/quote-paper'
import { type Day, dayInZone, endOfDay } from '@/lib/domain/calendar'
import { moveJob } from '@/lib/domain/job/job-state'
import { type Quote, quoteTitle, totalsOf } from '@/lib/domain/quote/quote'
import { ok, type Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { inTransaction, type Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { findJobHead, type JobHead } from '@/lib/store/job-head'
import { createMail } from '@/lib/store/mail'
import { createPaper } from '@/lib/store/paper'
import { saveQuote } from '@/lib/store/quote'
import { moveJobInside } from '@/lib/workflow/counter/keep-job'
import { refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { holdTubes } from '@/lib/workflow/tubes/hold-tubes'
import { keepDraft, type WrittenQuote } from './keep-quote'
import { asDraft, requireLatest, requireOpenJob } from './quote-draft'
import { quoteFacts } from './quote-facts'
import { dayIn, moneyIn, noteQuote, noteTubes } from './quote-notes'
import { type MailOutcome, sendWithWaiting } from './send-waiting-mail'

export type SendWay = 'mail' | 'hand-over'

export type QuoteToSend = {
  readonly jobNumber: string
  readonly way: SendWay
  /** What stands in the form, kept first; null sends the draft as it was kept last. */
  readonly written: WrittenQuote | null
}

export type SentQuote = {
  readonly quoteId: string
  readonly paperId: string
  /** Null: handed over on paper. */
  readonly mail: MailOutcome | null
}

export async function sendQuote(step: Step, shop: Shop, input: QuoteToSend): Promise<Result<SentQuote, StepFault>> {
  const issued = await refusing(() => inTransaction((tx) => issue(tx, step, shop, input)))
  if (!issued.ok) return issued
  const { mailId, ...sent } = issued.value
  return ok({ ...sent, mail: mailId === null ? null : await sendWithWaiting(step, shop, mailId) })
}

type Issued = { readonly quoteId: string; readonly paperId: string; readonly mailId: string | null }

async function issue(tx: Tx, step: Step, shop: Shop, { jobNumber, way, written }: QuoteToSend): Promise<Issued> {
  const job = await requireOpenJob(tx, jobNumber)
  if (written) await keepDraft(tx, step, shop, { job, written })
  const quote = asDraft(await requireLatest(tx, job))
  const head = (await findJobHead(jobNumber, tx)) ?? refuse({ code: 'not-found', what: `Job ${jobNumber}` })
  refuseUnfit(step, shop, quote)
  if (way === 'mail' && head.customer.email === '') refuse({ code: 'no-address', customer: head.customer.name })
  const until = endOfDay(quote.validUntil, shop.timeZone)
  const held = await holdTubes(tx, step, { quote, job, hold: 'held', until })
  if (!(await saveQuote(tx, quote.id, quote.version, { state: 'sent', sentAt: step.now })))
    refuse(await stale(tx, 'quote', quote.id, quote.version))
  const facts = await quoteFacts(tx, shop, head, quote, step.now)
  const papers = {
    jobId: job.id,
    kind: 'quote',
    number: quoteNumber(facts),
    issuedAt: step.now,
    issuedBy: step.actor.name,
  } as const
  const paperId = await createPaper(tx, { ...papers, view: quotePaper(facts) })
  const mailId = way === 'mail' ? await writeMail(tx, step, { head, facts, paperId }) : null
  await noteSent(tx, step, shop, { quote, head, way, held })
  return { quoteId: quote.id, paperId, mailId }
}

function refuseUnfit({ now }: Step, shop: Shop, quote: Quote): void {
  const named = quoteTitle(quote)
  if (quote.lines.length === 0) refuse({ code: 'quote-empty', quote: named })
  if (totalsOf(quote).total < 0) refuse({ code: 'quote-below-zero', quote: named })
  const today: Day = dayInZone(now, shop.timeZone)
  if (quote.validUntil < today) refuse({ code: 'valid-day-past', validUntil: quote.validUntil, today })
}

type MailParts = { readonly head: JobHead; readonly facts: QuoteFacts; readonly paperId: string }

export async function writeMail(tx: Tx, { now }: Step, { head, facts, paperId }: MailParts): Promise<string> {
  const { subject, text } = quoteMail(facts)
  return createMail(tx, { jobId: head.job.id, paperId, to: head.customer.email, subject, body: text, createdAt: now })
}

type Sent = { readonly quote: Quote; readonly head: JobHead; readonly way: SendWay; readonly held: readonly string[] }

async function noteSent(tx: Tx, step: Step, shop: Shop, { quote, head, way, held }: Sent): Promise<void> {
  const { job, customer } = head
  const named = quoteTitle(quote)
  const how = way === 'mail' ? `to be mailed to ${customer.email}` : 'printed to be handed over'
  const did = `Quote ${named} over ${moneyIn(shop, totalsOf(quote).total)} ${how}, valid until ${dayIn(shop, quote.validUntil)}`
  await noteQuote(tx, step, { quote, did, version: quote.version + 1 })
  await noteTubes(
    tx,
    step,
    held,
    `Held for job ${job.number} by quote ${named}, until the end of ${dayIn(shop, quote.validUntil)}`,
  )
  if (moveJob(job.state, 'waiting-for-answer').ok)
    await moveJobInside(tx, step, job, 'waiting-for-answer', `Quote ${named} is out`)
  else {
    const about = { subject: 'job', subjectId: job.id, jobId: job.id } as const
    await writeHistory(tx, {
      at: step.now,
      person: step.actor.name,
      ...about,
      did: `Quote ${named} is out; the job's state stays`,
    })
  }
}
