/** Writing a quote, sending it, and what the customer says. */

import { addDays, dayInZone } from '@/lib/domain/calendar'
import { depositOf, type Money, money, NOTHING } from '@/lib/domain/money'
import type { AnswerWay } from '@/lib/domain/quote/answer'
import type { Quote } from '@/lib/domain/quote/quote'
import { totalsOf } from '@/lib/domain/quote/quote'
import { partName } from '@/lib/domain/stock/part'
import { inTransaction } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { findJob } from '@/lib/store/job'
import { claimMail, listMailsOfJob, settleMail } from '@/lib/store/mail'
import { listParts } from '@/lib/store/part'
import { findLatestQuote } from '@/lib/store/quote'
import { answerQuote } from '@/lib/workflow/quote/answer-quote'
import { beginQuote, keepQuote, type WrittenLine } from '@/lib/workflow/quote/keep-quote'
import { type SendWay, sendQuote } from '@/lib/workflow/quote/send-quote'
import type { Step } from '@/lib/workflow/step/step'
import { settled } from '@/seed/settled'
import type { DemoWorld } from '@/seed/world'
import type { Deed, ToldJob } from './story'

type Priced = Omit<WrittenLine, 'id' | 'kind' | 'unitPrice' | 'taxable' | 'partId'> & {
  readonly dollars: number
  /** Name and value of a part of the drawers, which the line draws. */
  readonly drawer?: string
}

const WHOLE = 1000

export const hours = (text: string, count: number) => ({ text, thousandths: count * WHOLE, unit: 'h' })
export const part = (text: string, pieces: number, dollars: number, drawer?: string): Priced => ({
  text,
  drawer,
  thousandths: pieces * WHOLE,
  unit: 'pc',
  dollars,
})
export const fee = (text: string, dollars: number): Priced => ({ text, thousandths: WHOLE, unit: 'flat', dollars })

export type QuoteText = {
  readonly findings: string
  /** At the shop's rate. Labour and fees are not taxed here, goods are. */
  readonly labour: readonly ReturnType<typeof hours>[]
  readonly parts?: readonly Priced[]
  readonly fees?: readonly Priced[]
  readonly note?: string
}

const cents = (dollars: number): Money => money(Math.round(dollars * 100))

async function drawnPart(drawer: string | undefined): Promise<string | null> {
  if (drawer === undefined) return null
  const part = (await listParts()).find((each) => partName(each) === drawer)
  if (!part) throw new Error(`The demo has no part called ${drawer} yet`)
  return part.id
}

async function writtenLines({ shop }: DemoWorld, { labour, parts = [], fees = [] }: QuoteText): Promise<WrittenLine[]> {
  const priced = ({ dollars, drawer: _drawer, ...line }: Priced) => ({ ...line, id: null, unitPrice: cents(dollars) })
  const drawn = await Promise.all(parts.map(({ drawer }) => drawnPart(drawer)))
  return [
    ...labour.map((line) => ({
      ...line,
      id: null,
      kind: 'labour' as const,
      unitPrice: shop.hourlyRate,
      taxable: false,
    })),
    ...parts.map((line, at) => ({ ...priced(line), kind: 'part' as const, taxable: true, partId: drawn[at] ?? null })),
    ...fees.map((line) => ({ ...priced(line), kind: 'fee' as const, taxable: false })),
  ]
}

async function latestQuote({ number }: ToldJob): Promise<{ quote: Quote; jobId: string; findings: string }> {
  const job = await findJob(number)
  const quote = job && (await findLatestQuote(job.id))
  if (!quote) throw new Error(`Job ${number} has no quote`)
  return { quote, jobId: job.id, findings: job.findings }
}

/** With the tubes that were chosen before, if any. */
export const writeQuote =
  (text: QuoteText): Deed =>
  async (world, step, job) => {
    const { shop } = world
    await settled(shop, `quoting job ${job.number}`, beginQuote(step, shop, job.number))
    const { quote, findings } = await latestQuote(job)
    const written = {
      version: quote.version,
      validUntil: addDays(dayInZone(step.now, shop.timeZone), shop.quoteValidDays),
      depositPercent: shop.depositPercent,
      note: text.note ?? '',
      lines: await writtenLines(world, text),
      tubes: quote.lines
        .filter(({ kind }) => kind === 'tube')
        .map(({ id, unitPrice, taxable }) => ({ id, unitPrice, taxable })),
      findings: { before: findings, text: text.findings },
    }
    await settled(shop, `the quote of job ${job.number}`, keepQuote(step, shop, { jobNumber: job.number, written }))
  }

/** `refusedWith`: the other server's words when it did not take the mail. */
export const send =
  (way: SendWay, refusedWith = ''): Deed =>
  async (world, step, job) => {
    const sent = sendQuote(step, world.shop, { jobNumber: job.number, way, written: null })
    await settled(world.shop, `sending the quote of job ${job.number}`, sent)
    if (way === 'mail') await settleMails(step, job, refusedWith)
  }

/**
 * The demo has no mail server, and mails of its past must not go out when the
 * shop gets one: they are written down as taken, or as refused.
 */
async function settleMails({ actor, now }: Step, job: ToldJob, refusedWith: string): Promise<void> {
  const { jobId } = await latestQuote(job)
  for (const waiting of await listMailsOfJob(jobId)) {
    if (waiting.state !== 'waiting') continue
    await inTransaction(async (tx) => {
      const mail = await claimMail(tx, waiting.id, now)
      if (!mail) throw new Error(`The mail of job ${job.number} could not be settled`)
      await settleMail(tx, mail, refusedWith === '' ? { sentAt: now } : { words: refusedWith })
      const outcome = refusedWith === '' ? `sent to ${mail.to}` : `to ${mail.to} was not taken: ${refusedWith}`
      const did = `Mail “${mail.subject}” ${outcome}`
      await writeHistory(tx, { at: now, person: actor.name, subject: 'job', subjectId: jobId, jobId, did })
    })
  }
}

export type Said = { readonly by: string; readonly way: AnswerWay; readonly detail?: string }

/** With the deposit the quote asks for, when `deposit` says how it was paid. */
export const acceptQuote =
  ({ by, way, detail = '' }: Said, moveTo: 'on-bench' | 'waiting-for-parts', deposit: string | null): Deed =>
  async (world, step, job) => {
    const { quote } = await latestQuote(job)
    const amount = depositOf(totalsOf(quote).total, quote.depositPercent)
    const given = {
      jobNumber: job.number,
      version: quote.version,
      by,
      way,
      detail,
      at: step.now,
      answer: 'accepted',
      moveTo,
    } as const
    const paid = deposit !== null && amount > NOTHING ? { amount, how: deposit } : null
    await settled(
      world.shop,
      `the yes to job ${job.number}`,
      answerQuote(step, world.shop, { ...given, deposit: paid }),
    )
  }

export const declineQuote =
  ({ by, way, detail = '' }: Said): Deed =>
  async (world, step, job) => {
    const { quote } = await latestQuote(job)
    const given = {
      jobNumber: job.number,
      version: quote.version,
      by,
      way,
      detail,
      at: step.now,
      answer: 'declined',
    } as const
    await settled(world.shop, `the no to job ${job.number}`, answerQuote(step, world.shop, given))
  }
