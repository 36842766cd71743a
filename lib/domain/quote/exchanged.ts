/**
 * Tubes that were exchanged for others after a quote had gone out. The line keeps the text that
 * was quoted, and names the tube that is meant now: where the two differ, papers say both.
 *
 * The agreed price is the most the customer pays: a dearer tube needs a new yes, and for a
 * cheaper one the difference is credited in a line of its own (shop rule).
 */
import { type FittedTube, fittedTubeText, readFittedTube } from '@/lib/domain/amp/fitting'
import { type Money, money } from '@/lib/domain/money'
import { fail, ok, type Result } from '@/lib/domain/result'
import type { NewQuoteLine, Quote, QuoteLine } from './quote'

type Named = { readonly designation: string; readonly mark: string }

/** As it stands in the line of a quote: "6L6GC, mark T-0147". */
export const quotedText = ({ designation, mark }: Named): string => fittedTubeText({ type: designation, mark })

export type Exchanged = { readonly position: string; readonly quoted: FittedTube; readonly tube: FittedTube }

export function exchangesOn(
  { lines }: Pick<Quote, 'lines'>,
  tubes: readonly (Named & { readonly id: string })[],
): Exchanged[] {
  const byId = new Map(tubes.map((tube) => [tube.id, tube]))
  return lines.flatMap(({ kind, text, tubeId, socketPosition }): Exchanged[] => {
    const tube = kind === 'tube' ? byId.get(tubeId ?? '') : undefined
    if (!tube || quotedText(tube) === text) return []
    const { designation: type, mark } = tube
    return [{ position: socketPosition ?? '', quoted: readFittedTube(text), tube: { type, mark } }]
  })
}

/** `now` says how it stands with the other: "to fit", "fitted". */
export function exchangedText({ position, quoted, tube }: Exchanged, now: string): string {
  const other = quoted.type === tube.type ? '' : ', another designation than quoted'
  return `${position}: quoted ${fittedTubeText(quoted)}; ${now} ${fittedTubeText(tube)}${other}.`
}

/** The only fee that belongs to a socket. */
export const isExchangeCredit = ({ kind, socketPosition }: Pick<QuoteLine, 'kind' | 'socketPosition'>): boolean =>
  kind === 'fee' && socketPosition !== null

/** As the customer was told: without what was credited since. */
export const asAgreed = (quote: Quote): Quote => ({
  ...quote,
  lines: quote.lines.filter((line) => !isExchangeCredit(line)),
})

export type ExchangePrice = {
  readonly unitPrice: Money
  /** Less for the customer than the price of the line; not below nothing. */
  readonly credit: Money
}

export type PricedExchange = {
  readonly line: Pick<QuoteLine, 'text' | 'unitPrice'>
  readonly state: Quote['state']
  /** Null: it is not known any more. */
  readonly out: { readonly price: Money } | null
  readonly into: Named & { readonly price: Money }
}

/** `agreed` of the fault is the price that was quoted. */
export function exchangePrice({
  line,
  state,
  out,
  into,
}: PricedExchange): Result<ExchangePrice, { readonly agreed: Money }> {
  const agreed = line.unitPrice
  const nothing = money(0)
  // Nothing is agreed on a draft: a price written by hand stays, else the tube brings its own.
  if (state === 'draft')
    return ok({ unitPrice: out !== null && out.price === agreed ? into.price : agreed, credit: nothing })
  if (quotedText(into) === line.text) return ok({ unitPrice: agreed, credit: nothing })
  if (into.price > agreed) return fail({ agreed })
  return ok({ unitPrice: agreed, credit: money(agreed - into.price) })
}

type Crediting = {
  readonly line: Pick<QuoteLine, 'taxable' | 'socketPosition'>
  readonly into: Named
  readonly credit: Money
}

export const creditLine = ({ line, into, credit }: Crediting): NewQuoteLine => ({
  kind: 'fee',
  text: `${line.socketPosition}: ${quotedText(into)} costs less than what was quoted`,
  thousandths: 1000,
  unitPrice: money(-credit),
  unit: 'flat',
  taxable: line.taxable,
  tubeId: null,
  socketPosition: line.socketPosition,
  partId: null,
})

/** The lines a revision begins with: tubes by what is meant now, at what is charged for them. */
export function settledLines<Line extends NewQuoteLine>(
  lines: readonly Line[],
  tubes: readonly (Named & { readonly id: string })[],
): Line[] {
  const byId = new Map(tubes.map((tube) => [tube.id, tube]))
  return lines.flatMap((line): Line[] => {
    if (isExchangeCredit(line)) return []
    const tube = line.kind === 'tube' ? byId.get(line.tubeId ?? '') : undefined
    if (!tube) return [line]
    const credit = lines.find((each) => isExchangeCredit(each) && each.socketPosition === line.socketPosition)
    const unitPrice = money(line.unitPrice + (credit?.unitPrice ?? 0))
    return [{ ...line, text: quotedText(tube), unitPrice }]
  })
}
