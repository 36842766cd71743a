/** What an exchange costs the customer, in a sentence. */
import { quotedText } from '@/lib/domain/quote/exchanged'
import { quoteTitle } from '@/lib/domain/quote/quote'
import { dearerText } from '@/lib/domain/quote/quote-fault'
import type { ExchangeView } from './exchange-view'
import type { Looked } from './looked'

export function priceWords({ quote, line, asked, format }: ExchangeView, { stocked, price }: Looked): string {
  const { mark, price: own, ...rest } = stocked.tube
  const show = format.formatMoney
  if (!price.ok) {
    const named = { mark, position: asked.position, quote: quoteTitle(quote) }
    return dearerText({ ...named, price: show(own), agreed: show(price.fault.agreed) })
  }
  const { unitPrice, credit } = price.value
  if (quote.state === 'draft') return draftWords(show(line.unitPrice), show(unitPrice), mark, show(own))
  if (quotedText({ mark, ...rest }) === line.text) return `It is the one that was quoted: ${show(unitPrice)} stands.`
  if (credit === 0) return `${show(unitPrice)} was quoted for ${asked.position}, and stands.`
  return `${show(unitPrice)} was quoted for ${asked.position}; ${mark} costs ${show(own)}, so ${show(credit)} is credited to the customer in a line of its own.`
}

function draftWords(before: string, after: string, mark: string, own: string): string {
  if (before !== after) return `The line costs ${after} then, instead of ${before}.`
  return own === after
    ? `The line still costs ${after}.`
    : `The ${after} written on the line stays; ${mark} itself costs ${own}.`
}
