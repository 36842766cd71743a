/** The receipt handed over at the counter: what was left, by whom, and on which terms. */
import type { Money } from '@/lib/domain/money'
import { shortCautions } from './cautions'
import type { AmpFacts, CountedItem, CustomerFacts, PaperSettings } from './facts'
import { type Format, formatFor, NO_BREAK } from './format'
import type { Block, FactsBlock, Paper } from './paper'
import { ampFacts, COUNTED, customerFacts, fact, facts, given, heading, plainTable } from './shared-blocks'
import { capital, type Vocabulary, vocabulary } from './words'

export type ReceivedTube = { readonly position: string; readonly type: string; readonly mark: string }

export type ReceiptFacts = {
  readonly settings: PaperSettings
  readonly jobNumber: string
  /** Address that opens the job; printed as a QR code. */
  readonly jobUrl: string
  readonly receivedAt: string
  readonly receivedBy: string
  readonly customer: CustomerFacts
  readonly amp: AmpFacts
  /** In the customer's own words. */
  readonly fault: string
  readonly itemsLeft: readonly CountedItem[]
  /** Null is "no limit agreed": every amount is asked first. */
  readonly spendingLimit: Money | null
  /** Plain day. */
  readonly promisedOn: string | null
  readonly oldPartsBack: boolean
  readonly depositPaid: Money | null
  /** The shop's own paragraph. */
  readonly terms: string
  /** In chassis order; empty when nobody looked. */
  readonly tubesReceived: readonly ReceivedTube[]
}

export function receiptPaper(received: ReceiptFacts): Paper {
  const { settings, customer, amp } = received
  const format = formatFor(settings)
  const v = vocabulary(settings.words)
  return {
    kind: 'receipt',
    title: 'Receipt',
    number: received.jobNumber,
    letterhead: settings.shop,
    issuedOn: format.instant(settings.issuedAt),
    size: settings.size,
    language: v.locale,
    blocks: [
      { type: 'qr', text: received.jobUrl, caption: `Job ${received.jobNumber}` },
      agreed(received, format),
      heading('Customer'),
      customerFacts(customer),
      heading('Amplifier'),
      ampFacts(amp, format, v),
      heading('Fault, in the customer’s words'),
      { type: 'paragraph', text: given(received.fault), tone: 'quoted' },
      heading('Left with the amplifier'),
      ...itemsLeft(received.itemsLeft, format),
      ...tubesReceived(received.tubesReceived, v),
      ...terms(received.terms),
      shortCautions(v),
      {
        type: 'signatures',
        lines: [
          {
            label:
              received.terms.trim() === '' ? 'Customer: left as listed' : 'Customer: left as listed, terms accepted',
            name: '',
            date: '',
          },
          { label: 'For the shop', name: received.receivedBy, date: format.instantDay(received.receivedAt) },
        ],
      },
    ],
  }
}

function terms(text: string): Block[] {
  return text.trim() === '' ? [] : [heading('Terms'), { type: 'note', text }]
}

function agreed(received: ReceiptFacts, format: Format): FactsBlock {
  const { spendingLimit, promisedOn, depositPaid } = received
  return facts(2, [
    fact('Received', format.instant(received.receivedAt)),
    fact('Taken in by', received.receivedBy),
    fact('Promised', promisedOn === null ? 'no date promised' : format.dueDay(promisedOn)),
    fact('Spending limit', spendingLimit === null ? 'none agreed: we ask first' : format.money(spendingLimit)),
    fact('Deposit paid', depositPaid === null ? 'none' : format.money(depositPaid)),
    fact('Old parts back', received.oldPartsBack ? 'yes, bagged by socket' : 'no'),
  ])
}

function itemsLeft(items: readonly CountedItem[], format: Format): Block[] {
  if (items.length === 0) return [{ type: 'paragraph', text: 'Nothing else was left.', tone: 'plain' }]
  const rows = items.map(({ count, label }) => ({ cells: [`${format.count(count)}${NO_BREAK}×`, label] }))
  return [plainTable(COUNTED, rows)]
}

function tubesReceived(tubes: readonly ReceivedTube[], v: Vocabulary): Block[] {
  if (tubes.length === 0) return []
  const items = tubes.map(({ position, type, mark }) =>
    fact(position, [given(type), mark.trim() === '' ? 'no mark' : mark].join(', ')),
  )
  return [heading(`${capital(v.tubes)} as received, by socket`), facts(2, items)]
}
