/** Begins the job's quote, or keeps its draft. */
import type { Day } from '@/lib/domain/calendar'
import { changesBetween } from '@/lib/domain/history/changes'
import type { Job } from '@/lib/domain/job/job'
import {
  type LineKind,
  type NewQuoteLine,
  type PricedLine,
  type Quote,
  standingMatches,
} from '@/lib/domain/quote/quote'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { inTransaction, type Tx } from '@/lib/store/database'
import { findPart } from '@/lib/store/part'
import { type LineToKeep, releaseUnlisted, saveQuote } from '@/lib/store/quote'
import { changeJob } from '@/lib/workflow/counter/keep-job'
import { refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { asDraft, draftOf, requireLatest, requireOpenJob } from './quote-draft'
import { noteQuote, orderShown, quoteShown } from './quote-notes'

export type WrittenLine = PricedLine & {
  /** Null: new on the quote. */
  readonly id: string | null
  readonly kind: Exclude<LineKind, 'tube'>
  readonly text: string
  readonly unit: string
  /** Of the shop's drawers; left out or null: written freely. */
  readonly partId?: string | null
}

/** Which tube it is comes with the choice of tubes alone; only its price is written here. */
export type WrittenTube = Pick<PricedLine, 'unitPrice' | 'taxable'> & { readonly id: string }

export type WrittenQuote = {
  readonly version: number
  readonly validUntil: Day
  readonly depositPercent: number
  readonly note: string
  readonly lines: readonly WrittenLine[]
  /** Those still on the quote, in their order. */
  readonly tubes: readonly WrittenTube[]
  /** Of the job. `before` is what the form was opened with. */
  readonly findings: { readonly before: string; readonly text: string }
}

/** The draft there is, or a new one. */
export function beginQuote(step: Step, shop: Shop, jobNumber: string): Promise<Result<string, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => (await draftOf(tx, step, shop, await requireOpenJob(tx, jobNumber))).id),
  )
}

export function keepQuote(
  step: Step,
  shop: Shop,
  input: { readonly jobNumber: string; readonly written: WrittenQuote },
): Promise<Result<null, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const job = await requireOpenJob(tx, input.jobNumber)
      await keepDraft(tx, step, shop, { job, written: input.written })
      return null
    }),
  )
}

/** Inside a larger step, such as sending it. */
export async function keepDraft(
  tx: Tx,
  step: Step,
  shop: Shop,
  { job, written }: { readonly job: Job; readonly written: WrittenQuote },
): Promise<void> {
  const quote = await requireLatest(tx, job)
  if (quote.version !== written.version) refuse(await stale(tx, 'quote', quote.id, written.version))
  asDraft(quote)
  await refuseUnknownParts(tx, written.lines)
  const lines = [...written.lines.map((line) => lineToKeep(quote, line)), ...keptTubes(quote, written.tubes)]
  const { validUntil, depositPercent, note } = written
  const matches = standingMatches(quote.matches, lines)
  const change = { validUntil, depositPercent, note, matches }
  if (!(await saveQuote(tx, quote.id, quote.version, change, lines)))
    refuse(await stale(tx, 'quote', quote.id, quote.version))
  await releaseUnlisted(
    tx,
    quote.id,
    lines.flatMap(({ tubeId }) => tubeId ?? []),
  )
  const changes = [
    ...changesBetween(quoteShown(quote, shop), quoteShown({ ...quote, ...change, lines }, shop)),
    ...orderShown(quote.lines, lines, shop),
  ]
  await noteQuote(tx, step, { quote, did: `Quote ${quote.number} kept`, changes, version: quote.version + 1 })
  await keepFindings(tx, step, job, written.findings)
}

async function refuseUnknownParts(tx: Tx, lines: readonly WrittenLine[]): Promise<void> {
  for (const { partId, text } of lines)
    if (partId && !(await findPart(partId, tx))) refuse({ code: 'not-found', what: `The part of the line “${text}”` })
}

function lineToKeep(quote: Quote, { id, partId, ...line }: WrittenLine): LineToKeep {
  const known = quote.lines.some((each) => each.id === id && each.kind !== 'tube')
  const drawn = line.kind === 'part' ? (partId ?? null) : null
  const kept: NewQuoteLine = { ...line, tubeId: null, socketPosition: null, partId: drawn }
  return known && id !== null ? { ...kept, id } : kept
}

function keptTubes(quote: Quote, written: readonly WrittenTube[]): LineToKeep[] {
  const lines = new Map(quote.lines.map((line) => [line.id, line]))
  const prices = new Map(written.map(({ id, ...price }) => [id, price]))
  return [...prices].flatMap(([id, price]) => {
    const line = lines.get(id)
    if (line?.kind !== 'tube') return []
    const { doneAt: _at, doneBy: _by, ...kept } = line
    return [{ ...kept, ...price }]
  })
}

async function keepFindings(tx: Tx, step: Step, job: Job, { before, text }: WrittenQuote['findings']): Promise<void> {
  if (text === before || text === job.findings) return
  const changes = [{ label: 'Findings', from: job.findings, to: text }]
  // Only the findings matter here: that the job moved on meanwhile is no reason to stop.
  if (job.findings !== before)
    refuse({
      code: 'stale',
      savedBy: 'Somebody',
      savedAt: null,
      changes: [{ label: 'Findings', from: before, to: job.findings }],
    })
  await changeJob(tx, step, job, { did: 'Findings written down', change: { findings: text }, changes })
}
