/** What a step on a quote writes into the history, and how a quote is shown there. */
import { formatDay } from '@/lib/domain/calendar'
import { type Change, type Shown, shown } from '@/lib/domain/history/changes'
import { formatMoney, type Money } from '@/lib/domain/money'
import { labourWord } from '@/lib/domain/quote/labour-word'
import { orderChanges } from '@/lib/domain/quote/line-order'
import { amountOf, type LineKind, type Quote, type QuoteLine, quoteTotals } from '@/lib/domain/quote/quote'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import type { Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import type { Step } from '@/lib/workflow/step/step'

export const moneyIn = (shop: Shop, amount: Money): string =>
  formatMoney(amount, shop.currency, wordsFor(shop.words).locale)

export const dayIn = (shop: Shop, day: string): string => formatDay(day, wordsFor(shop.words).locale)

type ShownQuote = Pick<Quote, 'validUntil' | 'depositPercent' | 'note' | 'taxMilliPercent'> & {
  readonly lines: readonly Omit<QuoteLine, 'id' | 'doneAt' | 'doneBy'>[]
}

type ShownLine = ShownQuote['lines'][number]

const lineLabel = ({ kind, text, socketPosition }: ShownLine) =>
  kind === 'tube' && socketPosition ? socketPosition : text

function lineShown(line: ShownLine, shop: Shop): string {
  const { kind, text, socketPosition, thousandths, unit, unitPrice, taxable } = line
  const price = `${thousandths / 1000} ${unit} at ${moneyIn(shop, unitPrice)}, ${moneyIn(shop, amountOf(line))}`
  const tube = kind === 'tube' && socketPosition ? `${text}: ` : ''
  return `${tube}${price}${taxable ? '' : ', not taxed'}`
}

/** A line is known by what it is for, so that one more above it changes nothing. */
function linesShown(lines: readonly ShownLine[], shop: Shop): [string, string][] {
  const met = new Map<string, number>()
  return lines.map((line) => {
    const label = lineLabel(line)
    const times = (met.get(label) ?? 0) + 1
    met.set(label, times)
    return [times === 1 ? label : `${label} (${times})`, lineShown(line, shop)]
  })
}

export function quoteShown(
  { validUntil, depositPercent, note, lines, taxMilliPercent }: ShownQuote,
  shop: Shop,
): Shown {
  const { total } = quoteTotals(lines, taxMilliPercent, depositPercent)
  return shown([
    ['Total', moneyIn(shop, total)],
    ['Valid until', dayIn(shop, validUntil)],
    ['Deposit', `${depositPercent} %`],
    ['Note', note],
    ...linesShown(lines, shop),
  ])
}

const kindWords = (shop: Shop): Readonly<Record<LineKind, string>> => {
  const words = wordsFor(shop.words)
  return { labour: labourWord(words).toLowerCase(), part: 'parts', tube: words.tubes, fee: 'fees and credits' }
}

/** Lines that were moved; what else changed in them is told by `quoteShown`. */
export function orderShown(
  before: readonly QuoteLine[],
  after: readonly (ShownLine & { readonly id?: string })[],
  shop: Shop,
): Change[] {
  const placed = (line: ShownLine & { readonly id?: string }) => ({ ...line, label: lineLabel(line) })
  const words = kindWords(shop)
  return orderChanges(before.map(placed), after.map(placed), (kind) => words[kind])
}

export type QuoteNote = {
  readonly quote: Pick<Quote, 'id' | 'jobId'>
  readonly did: string
  readonly changes?: readonly Change[]
  /** Of the quote after this save. */
  readonly version: number
}

export async function noteQuote(
  tx: Tx,
  { actor, now }: Step,
  { quote, did, changes = [], version }: QuoteNote,
): Promise<void> {
  const about = { subject: 'quote', subjectId: quote.id, jobId: quote.jobId } as const
  await writeHistory(tx, { at: now, person: actor.name, ...about, did, changes, version })
}

/** Told on the tube itself: its own story does not read the job's. */
export async function noteTubes(tx: Tx, { actor, now }: Step, tubeIds: readonly string[], did: string): Promise<void> {
  for (const subjectId of tubeIds)
    await writeHistory(tx, { at: now, person: actor.name, subject: 'tube', subjectId, did })
}
