/** The quote: what the bench found, what it will cost, and until when the shop is bound by it. */
import type { Money } from '@/lib/domain/money'
import type { AmpFacts, CustomerFacts, MatchFacts, PaperSettings, TubeTestFacts } from './facts'
import { type Format, formatFor } from './format'
import type { Block, Paper, TableRow } from './paper'
import {
  ampFacts,
  column,
  customerFacts,
  fact,
  facts,
  given,
  heading,
  matchText,
  plainTable,
  testText,
} from './shared-blocks'
import { capital, type Vocabulary, vocabulary } from './words'

export type QuotedLine = {
  readonly text: string
  /** A second line under the first; empty for none. */
  readonly detail: string
  /** Quantity times 1000: 1.25 h is 1250. */
  readonly thousandths: number
  /** "h", "pc", "set", "flat". */
  readonly unit: string
  readonly unitPrice: Money
  readonly amount: Money
  /** A used part is stated as used, always. */
  readonly used: boolean
}
export type QuotedTube = {
  readonly mark: string
  readonly type: string
  /** "V4"; empty when not yet placed. */
  readonly position: string
  /** In words: "new old stock, boxed". */
  readonly condition: string
  readonly used: boolean
  readonly test: TubeTestFacts | null
  readonly price: Money
}
export type SetAside = { readonly text: string; readonly amount: Money | null }

export type QuoteFacts = {
  readonly settings: PaperSettings
  readonly number: string
  /** From 1. */
  readonly revision: number
  readonly jobNumber: string
  /** Plain day; bound to the end of it in the shop's zone. */
  readonly validUntil: string
  readonly customer: CustomerFacts
  readonly amp: AmpFacts
  /** Whole sentences, readings included. */
  readonly findings: readonly string[]
  /** To the customer, a paragraph each; empty for none. */
  readonly note: readonly string[]
  readonly labour: readonly QuotedLine[]
  readonly parts: readonly QuotedLine[]
  /** Matching fee, rush surcharge, a bench fee credited: no work of their own. */
  readonly fees: readonly QuotedLine[]
  readonly tubes: readonly QuotedTube[]
  readonly matches: readonly MatchFacts[]
  readonly subtotal: Money
  /** `milliPercent` is the rate times 1000: 8.875 % is 8875. */
  readonly tax: { readonly name: string; readonly milliPercent: number; readonly amount: Money }
  readonly total: Money
  readonly depositDue: Money | null
  /** Advised, priced apart, not in the total. */
  readonly optional: readonly SetAside[]
  /** Asked about and declined. */
  readonly declined: readonly SetAside[]
  readonly warranty: string
  /** How to say yes or no, in the shop's words. */
  readonly howToAnswer: string
}

export const quoteNumber = (quote: QuoteFacts): string => `${quote.number} rev. ${quote.revision}`

export function quotePaper(quote: QuoteFacts): Paper {
  const { settings } = quote
  const format = formatFor(settings)
  const v = vocabulary(settings.words)
  return {
    kind: 'quote',
    title: 'Quote',
    number: quoteNumber(quote),
    letterhead: settings.shop,
    issuedOn: format.instant(settings.issuedAt),
    size: settings.size,
    language: v.locale,
    blocks: [
      facts(2, [
        fact('Job', quote.jobNumber),
        fact('Valid until', format.dueDay(quote.validUntil)),
        fact('Total', format.money(quote.total)),
        fact('Deposit due', quote.depositDue === null ? 'none' : format.money(quote.depositDue)),
      ]),
      heading('Customer'),
      customerFacts(quote.customer),
      heading('Amplifier'),
      ampFacts(quote.amp, format, v),
      heading('What the bench found'),
      ...findings(quote.findings),
      ...note(quote.note),
      heading('What it will cost'),
      priceTable(quote, format, v),
      ...matchNotes(quote, format, v),
      ...setAside('Advised, not in the total', quote.optional, format),
      ...setAside('Declined', quote.declined, format),
      ...binding(quote, format),
      {
        type: 'signatures',
        lines: [{ label: 'Accepted by the customer', name: '', date: '' }],
      },
    ],
  }
}

function findings(sentences: readonly string[]): Block[] {
  const said = sentences.map((text) => text.trim()).filter((text) => text !== '')
  if (said.length === 0) return [{ type: 'paragraph', text: 'No findings recorded.', tone: 'plain' }]
  return said.map((text) => ({ type: 'paragraph', text, tone: 'plain' }))
}

function note(paragraphs: readonly string[]): Block[] {
  if (paragraphs.length === 0) return []
  return [heading('Note'), ...paragraphs.map((text): Block => ({ type: 'paragraph', text, tone: 'plain' }))]
}

/** A shop that charges no tax shows no row for it, and a subtotal would be the total once more. */
export const isTaxed = ({ tax }: QuoteFacts): boolean => tax.milliPercent > 0

function priceTable(quote: QuoteFacts, format: Format, v: Vocabulary): Block {
  const line = (quoted: QuotedLine): TableRow => lineRow(quoted, format)
  const groups = [
    { label: v.labour, rows: quote.labour.map(line) },
    { label: 'Parts', rows: quote.parts.map(line) },
    { label: capital(v.tubes), rows: quote.tubes.map((tube) => tubeRow(tube, format, v)) },
    { label: 'Fees and credits', rows: quote.fees.map(line) },
  ]
  return {
    type: 'table',
    columns: [
      column('Item', 11),
      column('Quantity', 2, 'end'),
      column('Unit', 1.6),
      column('Unit price', 3, 'end'),
      column('Amount', 3, 'end'),
    ],
    groups: groups.filter(({ rows }) => rows.length > 0),
    totals: [
      ...(isTaxed(quote)
        ? [
            { label: 'Subtotal', value: format.money(quote.subtotal), strong: false },
            {
              label: `${quote.tax.name} ${format.rate(quote.tax.milliPercent)}`,
              value: format.money(quote.tax.amount),
              strong: false,
            },
          ]
        : []),
      { label: 'Total', value: format.money(quote.total), strong: true },
      ...(quote.depositDue === null
        ? []
        : [{ label: 'Deposit due before work starts', value: format.money(quote.depositDue), strong: false }]),
    ],
  }
}

function lineRow(line: QuotedLine, format: Format): TableRow {
  const details = [...(line.used ? ['Used part.'] : []), ...(line.detail.trim() === '' ? [] : [line.detail.trim()])]
  const cells = [
    given(line.text),
    format.quantity(line.thousandths),
    line.unit,
    format.money(line.unitPrice),
    format.money(line.amount),
  ]
  return { cells, detail: details.join(' ') }
}

function tubeRow(tube: QuotedTube, format: Format, v: Vocabulary): TableRow {
  const place = tube.position === '' ? '' : ` for ${tube.position}`
  const price = format.money(tube.price)
  const condition = [tube.condition.trim(), ...(tube.used ? [`used ${v.tube}`] : [])].filter((text) => text !== '')
  const test = tube.test === null ? 'no test record' : testText(tube.test, format, v)
  const detail = `${capital([...condition, test].join('; '))}.`
  return { cells: [`${tube.type}, mark ${tube.mark}${place}`, '1', 'pc', price, price], detail }
}

function matchNotes(quote: QuoteFacts, format: Format, v: Vocabulary): Block[] {
  return quote.matches.map((match) => ({ type: 'note', text: matchText(match, format, v) }))
}

function setAside(title: string, items: readonly SetAside[], format: Format): Block[] {
  if (items.length === 0) return []
  const rows = items.map(({ text, amount }) => ({ cells: [text, amount === null ? '' : format.money(amount)] }))
  return [heading(title), plainTable([column('Item', 16), column('Amount', 4, 'end')], rows)]
}

function binding(quote: QuoteFacts, format: Format): Block[] {
  const until = format.dueDay(quote.validUntil)
  return [
    heading('Warranty'),
    { type: 'paragraph', text: given(quote.warranty), tone: 'plain' },
    heading('How to answer'),
    { type: 'paragraph', text: given(quote.howToAnswer), tone: 'plain' },
    {
      type: 'note',
      text: `This is a quote, not an estimate. It binds the shop to this total until the end of ${until}; nothing beyond it is done without your consent. Your rights under local law stand.`,
    },
  ]
}
