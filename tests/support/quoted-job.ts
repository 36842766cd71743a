/** A job with an amplifier of a matched pair, and the steps that bring it to a quote. */
import { money } from '@/lib/domain/money'
import { type Quote, totalsOf } from '@/lib/domain/quote/quote'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { createCustomer } from '@/lib/store/customer'
import { inTransaction } from '@/lib/store/database'
import { createJob, findJob } from '@/lib/store/job'
import { findLatestQuote } from '@/lib/store/quote'
import { findShop } from '@/lib/store/shop'
import { findTube } from '@/lib/store/tube'
import { keepAmpSheet } from '@/lib/workflow/bench/keep-amp-sheet'
import { moveJobByHand } from '@/lib/workflow/counter/keep-job'
import { type AnswerToKeep, answerQuote } from '@/lib/workflow/quote/answer-quote'
import { beginQuote, keepQuote, type WrittenLine, type WrittenQuote } from '@/lib/workflow/quote/keep-quote'
import { type SendWay, sendQuote } from '@/lib/workflow/quote/send-quote'
import type { Step } from '@/lib/workflow/step/step'
import { chooseTubes } from '@/lib/workflow/tubes/choose-tubes'
import { ampOnFile, cathodePair } from './amps'
import { atBench, NOW } from './person-at-work'

export function done<T>(result: Result<T, unknown>): T {
  if (!result.ok) throw new Error(`Refused: ${JSON.stringify(result.fault)}`)
  return result.value
}

export async function shopOnFile(): Promise<Shop> {
  const shop = await findShop()
  if (!shop) throw new Error('No shop is on file')
  return shop
}

/** On the bench. Gives its number. */
export async function jobOnBench(owner: { readonly name?: string; readonly email?: string } = {}): Promise<string> {
  const { name = 'Mirela Thorn', email = 'mirela@thorn.example' } = owner
  const details = {
    name,
    phone: '207-555-0177',
    email,
    address: '3 Cooper’s Rise',
    preferredContact: 'phone',
    note: '',
  } as const
  const customerId = await inTransaction((tx) => createCustomer(tx, details))
  const ampId = await ampOnFile({}, customerId)
  const sockets = cathodePair().map((socket) => ({ ...socket, id: null }))
  done(await keepAmpSheet(atBench(), { ampId, version: 1, outputClass: 'push-pull', sockets }))
  const intake = {
    fault: 'Hums',
    faultSettings: '',
    spendingLimit: money(30_000),
    promisedOn: null,
    oldPartsBack: false,
    items: [],
  }
  const who = { takenInById: 'odo', takenInBy: 'Odo', receivedAt: NOW }
  const job = await inTransaction((tx) => createJob(tx, { ...intake, ...who, customerId, ampId }))
  done(await moveJobByHand(atBench(), job.number, 1, 'on-bench'))
  return job.number
}

export async function jobOf(number: string) {
  const job = await findJob(number)
  if (!job) throw new Error(`No job ${number}`)
  return job
}

export async function quoteOf(jobNumber: string): Promise<Quote> {
  const quote = await findLatestQuote((await jobOf(jobNumber)).id)
  if (!quote) throw new Error(`Job ${jobNumber} has no quote`)
  return quote
}

export const writtenLine = (over: Partial<WrittenLine> = {}): WrittenLine => ({
  id: null,
  kind: 'labour',
  text: 'Set idle current',
  thousandths: 1250,
  unit: 'h',
  unitPrice: money(9000),
  taxable: true,
  ...over,
})

/** The quote as it stands, as a form would send it back. */
export async function written(jobNumber: string, over: Partial<WrittenQuote> = {}): Promise<WrittenQuote> {
  const quote = await quoteOf(jobNumber)
  const { findings } = await jobOf(jobNumber)
  const { version, validUntil, depositPercent, note } = quote
  const lines = quote.lines.flatMap(({ id, kind, text, thousandths, unit, unitPrice, taxable, partId }) =>
    kind === 'tube' ? [] : [{ id, kind, text, thousandths, unit, unitPrice, taxable, partId }],
  )
  const tubes = quote.lines
    .filter(({ kind }) => kind === 'tube')
    .map(({ id, unitPrice, taxable }) => ({ id, unitPrice, taxable }))
  return {
    version,
    validUntil,
    depositPercent,
    note,
    lines,
    tubes,
    findings: { before: findings, text: findings },
    ...over,
  }
}

export async function keep(jobNumber: string, over: Partial<WrittenQuote> = {}, step: Step = atBench()) {
  return keepQuote(step, await shopOnFile(), { jobNumber, written: await written(jobNumber, over) })
}

/** With one labour line and these tubes in V3, V4. */
export async function draftWith(
  jobNumber: string,
  tubeIds: readonly string[] = [],
  step: Step = atBench(),
): Promise<void> {
  const shop = await shopOnFile()
  done(await beginQuote(step, shop, jobNumber))
  done(await keep(jobNumber, { lines: [writtenLine()] }, step))
  if (tubeIds.length > 0) done(await choose(jobNumber, tubeIds, step))
}

export async function choose(jobNumber: string, tubeIds: readonly string[], step: Step = atBench()) {
  const tubes = tubeIds.map((tubeId, index) => ({ tubeId, socketPosition: ['V3', 'V4'][index] ?? 'V9' }))
  return chooseTubes(step, await shopOnFile(), { jobNumber, group: 'output', tubes, match: null })
}

export async function send(jobNumber: string, way: SendWay = 'hand-over', step: Step = atBench()) {
  return sendQuote(step, await shopOnFile(), { jobNumber, way, written: null })
}

type AnswerInput = {
  readonly answer?: 'accepted' | 'declined'
  readonly at?: Date
  readonly deposit?: { amount: number; how: string }
}

export async function answer(
  jobNumber: string,
  { answer = 'accepted', at, deposit }: AnswerInput = {},
  step: Step = atBench(),
) {
  const { version } = await quoteOf(jobNumber)
  const given = {
    jobNumber,
    version,
    by: 'Mirela Thorn',
    way: 'by phone',
    detail: '207-555-0177',
    at: at ?? step.now,
  } as const
  const taken = deposit ? { amount: money(deposit.amount), how: deposit.how } : null
  const input: AnswerToKeep =
    answer === 'accepted' ? { ...given, answer, moveTo: 'on-bench', deposit: taken } : { ...given, answer }
  return answerQuote(step, await shopOnFile(), input)
}

export async function holdOf(tubeId: string) {
  const tube = await findTube(tubeId)
  if (!tube) throw new Error(`No tube ${tubeId}`)
  const { hold, heldForJobNumber, heldUntil } = tube
  return { hold, job: heldForJobNumber, until: heldUntil?.toISOString() ?? null }
}

export const daysLater = (days: number, who = 'Ines'): Step => atBench(who, new Date(NOW.getTime() + days * 86_400_000))

export const totalOf = async (jobNumber: string) => totalsOf(await quoteOf(jobNumber)).total
