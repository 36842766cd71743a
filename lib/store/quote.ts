/** Quotes with their lines, and the tubes a quote holds. Guarded by the quote's version. */
import type { Prisma } from '@/generated/sqlite/client'
import type { Day } from '@/lib/domain/calendar'
import { money } from '@/lib/domain/money'
import {
  FIRST_QUOTE,
  LINE_KINDS,
  type LineKind,
  type NewQuoteLine,
  type Quote,
  type QuotedMatch,
  type QuoteLine,
  type QuoteState,
} from '@/lib/domain/quote/quote'
import { nextNumber } from './counter'
import { db, type Tx } from './database'

const lineColumns = {
  id: true,
  kind: true,
  text: true,
  thousandths: true,
  unitPrice: true,
  unit: true,
  taxable: true,
  tubeId: true,
  socketPosition: true,
  partId: true,
  doneAt: true,
  doneBy: true,
} satisfies Prisma.QuoteLineSelect

const columns = {
  id: true,
  jobId: true,
  number: true,
  revision: true,
  state: true,
  validUntil: true,
  taxName: true,
  taxMilliPercent: true,
  depositPercent: true,
  note: true,
  matchFacts: true,
  sentAt: true,
  answeredAt: true,
  answer: true,
  answerHow: true,
  answerBy: true,
  answerTakenBy: true,
  version: true,
  createdAt: true,
  lines: { orderBy: { place: 'asc' }, select: lineColumns },
} satisfies Prisma.QuoteSelect

type Row = Prisma.QuoteGetPayload<{ select: typeof columns }>

const line = (row: Row['lines'][number]): QuoteLine => ({
  ...row,
  kind: row.kind as LineKind,
  unitPrice: money(row.unitPrice),
})

const quote = ({ matchFacts, ...row }: Row): Quote => ({
  ...row,
  state: row.state as QuoteState,
  validUntil: row.validUntil as Day,
  answer: row.answer as Quote['answer'],
  // The column is Json; only `matchColumn` writes it, with this very shape.
  matches: (matchFacts ?? []) as unknown as readonly QuotedMatch[],
  lines: row.lines.map(line),
})

const matchColumn = (matches: readonly QuotedMatch[]) => matches as unknown as Prisma.InputJsonArray

const LATEST = [{ createdAt: 'desc' }, { revision: 'desc' }] satisfies Prisma.QuoteOrderByWithRelationInput[]

export async function findQuote(id: string, tx: Tx = db()): Promise<Quote | null> {
  const row = await tx.quote.findUnique({ where: { id }, select: columns })
  return row && quote(row)
}

export async function findLatestQuote(jobId: string, tx: Tx = db()): Promise<Quote | null> {
  const row = await tx.quote.findFirst({ where: { jobId }, orderBy: LATEST, select: columns })
  return row && quote(row)
}

/** What the customer said yes to, and the work order follows. A later revision may be waiting for its answer beside it. */
export async function findAcceptedQuote(jobId: string, tx: Tx = db()): Promise<Quote | null> {
  const row = await tx.quote.findFirst({ where: { jobId, state: 'accepted' }, orderBy: LATEST, select: columns })
  return row && quote(row)
}

/** Newest first. */
export async function listQuotes(jobId: string, tx: Tx = db()): Promise<Quote[]> {
  const rows = await tx.quote.findMany({ where: { jobId }, orderBy: LATEST, select: columns })
  return rows.map(quote)
}

export type DraftTube = {
  readonly tubeId: string
  readonly mark: string
  readonly designation: string
  readonly socketPosition: string
}

/** Tubes on the job's draft; none when its latest quote is no draft. */
export async function findDraftTubes(jobId: string, tx: Tx = db()): Promise<DraftTube[]> {
  const tubes = { tubeId: { not: null }, socketPosition: { not: null } }
  const select = { tubeId: true, socketPosition: true, tube: { select: { mark: true, designation: true } } } as const
  const lines = { where: tubes, orderBy: { place: 'asc' }, select } as const
  const latest = await tx.quote.findFirst({ where: { jobId }, orderBy: LATEST, select: { state: true, lines } })
  if (latest?.state !== 'draft') return []
  return latest.lines.flatMap(({ tubeId, socketPosition, tube }) =>
    tubeId && socketPosition && tube ? [{ tubeId, socketPosition, ...tube }] : [],
  )
}

/** With an id, a line that is there already. */
export type LineToKeep = NewQuoteLine & { readonly id?: string }

export type NewQuote = Pick<
  Quote,
  'jobId' | 'validUntil' | 'taxName' | 'taxMilliPercent' | 'depositPercent' | 'note' | 'createdAt'
> & {
  /** Null: a number of its own, revision 1. */
  readonly revises: Pick<Quote, 'number' | 'revision'> | null
  readonly matches: readonly QuotedMatch[]
  readonly lines: readonly NewQuoteLine[]
}

const inOrder = <Line extends { readonly kind: LineKind }>(lines: readonly Line[]) =>
  LINE_KINDS.flatMap((kind) => lines.filter((each) => each.kind === kind))

const lineColumnsOf = (
  { kind, text, thousandths, unitPrice, unit, taxable, tubeId, socketPosition, partId }: NewQuoteLine,
  place: number,
) => ({
  ...{ kind, text, thousandths, unitPrice, unit, taxable, tubeId, socketPosition, partId, place },
})

export async function createQuote(tx: Tx, { revises, matches, lines, ...rest }: NewQuote): Promise<Quote> {
  const number = revises?.number ?? `Q${await nextNumber(tx, 'quote', FIRST_QUOTE)}`
  const revision = (revises?.revision ?? 0) + 1
  const create = inOrder(lines).map(lineColumnsOf)
  const data = { ...rest, number, revision, state: 'draft', matchFacts: matchColumn(matches), lines: { create } }
  return quote(await tx.quote.create({ data, select: columns }))
}

export type QuoteChange = Partial<
  Pick<
    Quote,
    | 'state'
    | 'validUntil'
    | 'depositPercent'
    | 'note'
    | 'matches'
    | 'sentAt'
    | 'answeredAt'
    | 'answer'
    | 'answerHow'
    | 'answerBy'
    | 'answerTakenBy'
  >
>

/** False, with nothing written, when somebody saved since `version`. Lines, when given, become the whole list. */
export async function saveQuote(
  tx: Tx,
  id: string,
  version: number,
  { matches, ...change }: QuoteChange,
  lines?: readonly LineToKeep[],
): Promise<boolean> {
  const facts = matches === undefined ? {} : { matchFacts: matchColumn(matches) }
  const { count } = await tx.quote.updateMany({
    where: { id, version },
    data: { ...change, ...facts, version: version + 1 },
  })
  if (count !== 1) return false
  if (lines) await replaceLines(tx, id, lines)
  return true
}

async function replaceLines(tx: Tx, quoteId: string, lines: readonly LineToKeep[]): Promise<void> {
  const kept = lines.flatMap(({ id }) => id ?? [])
  await tx.quoteLine.deleteMany({ where: { quoteId, id: { notIn: kept } } })
  for (const [place, each] of inOrder(lines).entries()) {
    const data = lineColumnsOf(each, place)
    if (each.id === undefined) await tx.quoteLine.create({ data: { ...data, quoteId } })
    else await tx.quoteLine.update({ where: { id: each.id, quoteId }, data })
  }
}

/** Ticked off at the bench, or not any more. */
export async function saveLineDone(
  tx: Tx,
  lineId: string,
  done: { readonly at: Date; readonly by: string } | null,
): Promise<void> {
  await tx.quoteLine.update({ where: { id: lineId }, data: { doneAt: done?.at ?? null, doneBy: done?.by ?? '' } })
}

/** What one quote holds passes to another as it is, to the same end. */
export async function passHolds(tx: Tx, fromQuoteId: string, toQuoteId: string): Promise<void> {
  await tx.tube.updateMany({ where: { heldByQuoteId: fromQuoteId }, data: { heldByQuoteId: toQuoteId } })
}

/** Lets go what a quote holds but no longer lists. */
export async function releaseUnlisted(tx: Tx, quoteId: string, listed: readonly string[]): Promise<void> {
  const where = { heldByQuoteId: quoteId, id: { notIn: [...listed] } }
  await tx.tube.updateMany({ where, data: { hold: '', heldForJob: null, heldByQuoteId: null, heldUntil: null } })
}

/** Tubes that sit in this job's amplifier by this job's work. */
export async function listTubesFittedIn(jobId: string, tx: Tx = db()): Promise<string[]> {
  const rows = await tx.fitting.findMany({ where: { jobId, removedAt: null }, select: { tubeId: true } })
  return rows.flatMap(({ tubeId }) => tubeId ?? [])
}

/** Work that followed an answer: tubes fitted and lines ticked off since. */
export async function countWorkSince(
  jobId: string,
  quoteId: string,
  since: Date,
  tx: Tx,
): Promise<{ fitted: number; done: number }> {
  const fitted = await tx.fitting.count({ where: { jobId, fittedAt: { gte: since } } })
  const done = await tx.quoteLine.count({ where: { quoteId, doneAt: { gte: since } } })
  return { fitted, done }
}
