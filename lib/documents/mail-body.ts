/** The mail that carries a quote: the same facts and the same formatting as the paper attached to it. */
import { formatFor } from './format'
import { letterheadLines } from './paper-text'
import { isTaxed, type QuoteFacts, quoteNumber } from './quote-paper'
import { given } from './shared-blocks'

export type MailBody = { readonly subject: string; readonly text: string; readonly html: string }

export function quoteMail(quote: QuoteFacts): MailBody {
  const paragraphs = quoteParagraphs(quote)
  return {
    subject: oneLine(`Quote ${quoteNumber(quote)} for your ${ampName(quote)}`),
    text: `${paragraphs.map((lines) => lines.join('\n')).join('\n\n')}\n`,
    html: `<!doctype html><html lang="${quote.settings.words === 'US' ? 'en-US' : 'en-GB'}"><body>${paragraphs
      .map((lines) => `<p>${lines.map(escaped).join('<br>')}</p>`)
      .join('')}</body></html>`,
  }
}

const ampName = ({ amp }: QuoteFacts): string => `${amp.make} ${amp.model}`.trim() || 'amplifier'

function quoteParagraphs(quote: QuoteFacts): string[][] {
  const format = formatFor(quote.settings)
  const deposit = quote.depositDue === null ? [] : [`Deposit due before work starts: ${format.money(quote.depositDue)}`]
  const paragraphs = [
    [`Dear ${quote.customer.name},`],
    [`Your ${ampName(quote)} (job ${quote.jobNumber}) has been on the bench. Our quote is attached.`],
    [
      `Quote: ${quoteNumber(quote)}`,
      `Total${isTaxed(quote) ? `, ${quote.tax.name} included` : ''}: ${format.money(quote.total)}`,
      ...deposit,
      `Valid until the end of ${format.dueDay(quote.validUntil)}`,
    ],
    ['How to answer:', given(quote.howToAnswer)],
    ['It is a quote, not an estimate: until that day it binds us, and nothing beyond it is done without your consent.'],
    letterheadLines(quote.settings.shop),
  ]
  return paragraphs.map((lines) => lines.map((line) => line.replace(/\u00a0/g, ' ')))
}

/** A line break in a subject could start a header of its own. */
const oneLine = (text: string): string => text.replace(/\s+/g, ' ').trim()

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }
const escaped = (text: string): string =>
  text.replace(/[&<>"]/g, (mark) => ENTITIES[mark] ?? mark).replace(/\n/g, '<br>')
