/** What every tube in stock would make of the set, and what one of them would cost. */
import 'server-only'
import { byBalance } from '@/lib/domain/matching/balanced-sections'
import type { Candidate, MatchLimits } from '@/lib/domain/matching/candidate'
import { naturalOrder } from '@/lib/domain/matching/natural-order'
import type { SetOption } from '@/lib/domain/matching/proposal'
import { type ReplaceFault, type Replacements, replaceOne } from '@/lib/domain/matching/replace-one'
import type { Money } from '@/lib/domain/money'
import { type ExchangePrice, exchangePrice } from '@/lib/domain/quote/exchanged'
import { quoteFaultText } from '@/lib/domain/quote/quote-fault'
import { fail, type Result } from '@/lib/domain/result'
import { candidateOf, twinOf } from '@/lib/domain/stock/candidate-of'
import type { StockedTube } from '@/lib/domain/stock/tube'
import { unfitFor } from '@/lib/domain/stock/unfit-for'
import type { ExchangeView } from './exchange-view'

export type Compared = {
  /** A fault is a sentence: no set can be compared. */
  readonly sets: Result<Replacements, string>
  readonly limits: MatchLimits
  /** Why what was to be predicted is compared at the test point after all; empty: it is not. */
  readonly notPredicted: string
}

export function comparedSets(asked: ExchangeView): Compared {
  const { limits, basis, place } = asked
  const sets = replaced(asked, limits)
  if (sets.ok || sets.fault.code !== 'beside-not-predicted')
    return { sets: worded(sets), limits, notPredicted: basis.ok || place.group === null ? '' : basis.fault }
  const { predictions: _none, ...atTestPoint } = limits
  const [first] = sets.fault.marks
  return {
    sets: worded(replaced(asked, atTestPoint)),
    limits: atTestPoint,
    notPredicted: `What ${first} would do here cannot be said.`,
  }
}

function replaced({ beside, out, stock, place, view }: ExchangeView, limits: MatchLimits) {
  const candidates = stock.map((each) => candidateOf(each, view))
  const staying = beside.map(({ stocked }) => candidateOf(stocked, view))
  return replaceOne({ beside: staying, out: candidateOf(out, view), stock: candidates }, place.demand, limits)
}

const worded = (sets: Result<Replacements, ReplaceFault>): Result<Replacements, string> =>
  sets.ok ? sets : fail(replaceFaultText(sets.fault))

function replaceFaultText({ code, marks }: ReplaceFault): string {
  const named = marks.join(', ')
  switch (code) {
    case 'beside-not-tested':
      return `${named} stays and has no usable test, so no set can be compared.`
    case 'beside-not-predicted':
      return `What ${named} would do here cannot be said, so no set can be compared.`
    case 'beside-not-comparable':
      return `${named} stay and were tested at different points or on different instruments, so no set can be compared.`
  }
}

export type Priced = Result<ExchangePrice, { readonly agreed: Money }>

export const priceWith = (
  { line, quote, out }: Pick<ExchangeView, 'line' | 'quote' | 'out'>,
  into: { readonly designation: string; readonly mark: string; readonly price: Money },
): Priced => exchangePrice({ line, state: quote.state, out: out.tube, into })

export type Offers = {
  readonly best: readonly Candidate[]
  /** That would do, but cost more than was agreed. */
  readonly dearer: number
}

const SHOWN = 5

/** Least loss first; a phase inverter asks for balanced sections instead of a set, any other socket alone for no figures at all. */
export function offersOf(asked: ExchangeView, compared: Compared): Offers {
  const ranked = rankedFor(asked, compared)
  const named = new Set(asked.quote.lines.flatMap(({ tubeId }) => tubeId ?? []))
  const free = ranked.filter(({ tubeId }) => !named.has(tubeId))
  const within = free.filter((tube) => priceWith(asked, tube).ok)
  return { best: within.slice(0, SHOWN), dearer: free.length - within.length }
}

function rankedFor({ stock, place, view, format }: ExchangeView, { sets, limits }: Compared): readonly Candidate[] {
  if (place.group !== null) return sets.ok ? sets.value.ranked : []
  const fit = stock.filter((each) => unfitFor(each, place, { ...view, limits, format }).length === 0)
  if (place.socket.role === 'phase-inverter')
    return byBalance(fit.flatMap((each) => twinOf(each, view) ?? [])).map(({ candidate }) => candidate)
  const candidates = fit.map((each) => candidateOf(each, view))
  return candidates.sort((a, b) => a.price - b.price || naturalOrder(a.mark, b.mark))
}

export type LookedAt = {
  readonly stocked: StockedTube
  /** Sentences; empty: it may go in. */
  readonly against: readonly string[]
  /** Of those, what a prediction says. */
  readonly predicted: readonly string[]
  readonly price: Priced
  /** Null: it does not compare with those that stay. */
  readonly option: SetOption | null
}

export function lookedAt(asked: ExchangeView, into: StockedTube, { sets, limits }: Compared): LookedAt {
  const { place, view, format, words, quote, line, asked: at } = asked
  const { predictions: _none, ...plain } = limits
  const unfit = (kept: MatchLimits) => unfitFor(into, place, { ...view, limits: kept, format })
  const [all, bare] = [unfit(limits), unfit(plain)]
  const { mark, id } = into.tube
  const on = quote.lines.find(({ tubeId, id: lineId }) => tubeId === id && lineId !== line.id)
  const standing =
    line.tubeId === id
      ? [quoteFaultText({ code: 'exchange-for-itself', mark, position: at.position }, words)]
      : on
        ? [quoteFaultText({ code: 'exchange-taken', mark, on: on.socketPosition ?? '' }, words)]
        : []
  return {
    stocked: into,
    against: [...standing, ...all],
    predicted: bare.length === 0 ? all : [],
    price: priceWith(asked, into.tube),
    option: sets.ok ? sets.value.setWith(id) : null,
  }
}
