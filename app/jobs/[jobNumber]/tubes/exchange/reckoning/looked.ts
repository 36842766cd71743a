/** One tube that is looked at in place of another: what stands against it, what it would cost, and what the set would be. */
import 'server-only'
import type { MatchLimits } from '@/lib/domain/matching/candidate'
import type { SetOption } from '@/lib/domain/matching/proposal'
import type { Money } from '@/lib/domain/money'
import { type ExchangePrice, exchangePrice } from '@/lib/domain/quote/exchanged'
import { quoteFaultText } from '@/lib/domain/quote/quote-fault'
import type { Result } from '@/lib/domain/result'
import type { StockedTube } from '@/lib/domain/stock/tube'
import { unfitFor } from '@/lib/domain/stock/unfit-for'
import { type Compared, setWith } from './compared-sets'
import type { ExchangeView } from './exchange-view'

export type Priced = Result<ExchangePrice, { readonly agreed: Money }>

export const priceWith = (
  { line, quote, out }: Pick<ExchangeView, 'line' | 'quote' | 'out'>,
  into: { readonly designation: string; readonly mark: string; readonly price: Money },
): Priced => exchangePrice({ line, state: quote.state, out: out.tube, into })

export type Looked = {
  readonly stocked: StockedTube
  /** Sentences; empty: it may go in. */
  readonly against: readonly string[]
  /** Of those, what a prediction says. */
  readonly predicted: readonly string[]
  readonly price: Priced
  /** Null: it does not compare with those that stay. */
  readonly option: SetOption | null
}

export function lookedAt(asked: ExchangeView, into: StockedTube, compared: Compared): Looked {
  const { place, view, format, words, quote, line, asked: at } = asked
  const { predictions: _none, ...plain } = compared.limits
  const unfit = (kept: MatchLimits) => unfitFor(into, place, { ...view, limits: kept, format })
  const [all, bare] = [unfit(compared.limits), unfit(plain)]
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
    option: setWith(compared, into.tube),
  }
}
