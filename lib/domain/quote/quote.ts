/**
 * A quote: what the work will cost, until when the shop is bound by it, and what
 * the customer answered. A sent quote is never edited; a revision is a new quote
 * under the same number. Only which tube a line means may change (exchanged.ts).
 *
 * Totals follow the rounding rules of lib/domain/money.ts: each line is rounded
 * to a minor unit, tax is taken once on the sum of the taxable lines, a deposit
 * is rounded up.
 */
import { type Day, endOfDay } from '@/lib/domain/calendar'
import type { MatchStatement } from '@/lib/domain/matching/proposal'
import { depositOf, lineAmount, type Money, NOTHING, sum, taxOn } from '@/lib/domain/money'

export const LINE_KINDS = ['labour', 'part', 'tube', 'fee'] as const
export type LineKind = (typeof LINE_KINDS)[number]

/** Lapsed is never written down: it is what a sent quote has become when its last day is over. */
export type QuoteState = 'draft' | 'sent' | 'accepted' | 'declined' | 'superseded' | 'lapsed'

export type PricedLine = {
  /** Quantity times 1000: pieces or hours. */
  readonly thousandths: number
  /** Below nothing for a credit, such as a bench fee already paid. */
  readonly unitPrice: Money
  readonly taxable: boolean
}

export type QuoteLine = PricedLine & {
  readonly id: string
  readonly kind: LineKind
  readonly text: string
  /** "h", "pc", "flat". */
  readonly unit: string
  /** The very tube; null for every other kind, and when it is no longer known. */
  readonly tubeId: string | null
  readonly socketPosition: string | null
  /** Of the shop's drawers; null for what is written freely. */
  readonly partId: string | null
  readonly doneAt: Date | null
  readonly doneBy: string
}

export type NewQuoteLine = Omit<QuoteLine, 'id' | 'doneAt' | 'doneBy'>

/** What is claimed of tubes quoted together. */
export type QuotedMatch = {
  readonly group: string
  readonly designation: string
  readonly tubeIds: readonly string[]
  readonly marks: readonly string[]
  readonly statement: MatchStatement
}

export type Quote = {
  readonly id: string
  readonly jobId: string
  /** "Q2001". */
  readonly number: string
  /** From 1. */
  readonly revision: number
  readonly state: QuoteState
  /** Bound to the end of it, in the shop's zone. */
  readonly validUntil: Day
  readonly taxName: string
  readonly taxMilliPercent: number
  readonly depositPercent: number
  readonly note: string
  readonly matches: readonly QuotedMatch[]
  readonly sentAt: Date | null
  readonly answeredAt: Date | null
  readonly answer: '' | 'accepted' | 'declined'
  /** In words: "by phone, 207-555-0177". */
  readonly answerHow: string
  readonly answerBy: string
  readonly answerTakenBy: string
  readonly version: number
  readonly createdAt: Date
  /** Labour, parts, tubes, fees; each in the order written. */
  readonly lines: readonly QuoteLine[]
}

export const FIRST_QUOTE = 2001

export const quoteTitle = ({ number, revision }: Pick<Quote, 'number' | 'revision'>): string =>
  `${number}, revision ${revision}`

export type QuoteTotals = {
  readonly byKind: Readonly<Record<LineKind, Money>>
  readonly subtotal: Money
  /** Of the subtotal, what is taxed. */
  readonly taxed: Money
  readonly tax: Money
  readonly total: Money
  /** Nothing when none is asked for. */
  readonly deposit: Money
}

export const amountOf = ({ unitPrice, thousandths }: PricedLine): Money => lineAmount(unitPrice, thousandths)

export function quoteTotals(
  lines: readonly (PricedLine & { readonly kind: LineKind })[],
  taxMilliPercent: number,
  depositPercent: number,
): QuoteTotals {
  const of = (kind: LineKind) => sum(lines.filter((line) => line.kind === kind).map(amountOf))
  const byKind = { labour: of('labour'), part: of('part'), tube: of('tube'), fee: of('fee') }
  const subtotal = sum(lines.map(amountOf))
  const taxed = sum(lines.filter(({ taxable }) => taxable).map(amountOf))
  const tax = taxOn(taxed, taxMilliPercent)
  const total = sum([subtotal, tax])
  const deposit = total > 0 ? depositOf(total, depositPercent) : NOTHING
  return { byKind, subtotal, taxed, tax, total, deposit }
}

export const totalsOf = ({ lines, taxMilliPercent, depositPercent }: Quote): QuoteTotals =>
  quoteTotals(lines, taxMilliPercent, depositPercent)

/** The state as it counts now. */
export function stateNow(
  { state, validUntil }: Pick<Quote, 'state' | 'validUntil'>,
  now: Date,
  zone: string,
): QuoteState {
  return state === 'sent' && endOfDay(validUntil, zone) < now ? 'lapsed' : state
}

const STATE_WORDS: Readonly<Record<QuoteState, string>> = {
  draft: 'draft',
  sent: 'waiting for an answer',
  accepted: 'accepted',
  declined: 'declined',
  superseded: 'superseded by a later revision',
  lapsed: 'lapsed, no answer in time',
}

export const quoteStateWord = (state: QuoteState): string => STATE_WORDS[state]

export const tubeIdsOf = ({ lines }: Pick<Quote, 'lines'>): string[] => lines.flatMap(({ tubeId }) => tubeId ?? [])

/** A match is claimed only while every tube of it is on the quote. */
export function standingMatches(
  matches: readonly QuotedMatch[],
  lines: readonly Pick<QuoteLine, 'tubeId'>[],
): QuotedMatch[] {
  const there = new Set(lines.map(({ tubeId }) => tubeId))
  return matches.filter(({ tubeIds }) => tubeIds.every((id) => there.has(id)))
}
