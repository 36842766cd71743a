/** The pickup sheet: what was done, read, fitted, declined and handed back, signed by the one who collects. */
import type { Money } from '@/lib/domain/money'
import type { PlateSheet } from '@/lib/domain/plot/plate-sheet'
import { cautionsBlock, unrepairedBox } from './cautions'
import type {
  AmpFacts,
  CountedItem,
  CustomerFacts,
  MatchFacts,
  PaperSettings,
  ReadingSetFacts,
  SignOffFacts,
} from './facts'
import { type Format, formatFor, NO_BREAK } from './format'
import type { Block, Paper } from './paper'
import { plotBlock } from './plot-block'
import { readingBlocks } from './reading-blocks'
import {
  ampFacts,
  COUNTED,
  column,
  customerFacts,
  fact,
  facts,
  given,
  heading,
  matchText,
  plainTable,
  signOffBlock,
} from './shared-blocks'
import { capital, type Vocabulary, vocabulary } from './words'

export type FittedTubeFacts = {
  readonly position: string
  readonly type: string
  /** Empty where the tube carries no mark. */
  readonly mark: string
  /** In words: "fitted new", "as received". */
  readonly origin: string
  readonly used: boolean
}
export type OldPartFacts = { readonly bag: string; readonly text: string }
export type PaymentLine = { readonly text: string; readonly paidAt: string; readonly amount: Money }
export type CollectorFacts = {
  readonly name: string
  readonly isOwner: boolean
  /** What was shown, when not the owner; null when nothing was. */
  readonly identity: string | null
}
export type PickupOutcome =
  | { readonly kind: 'repaired' }
  /** Not repaired, not safety-tested: prints the box that says so. */
  | { readonly kind: 'returned-unrepaired'; readonly reason: string }

export type PickupFacts = {
  readonly settings: PaperSettings
  readonly jobNumber: string
  readonly outcome: PickupOutcome
  readonly customer: CustomerFacts
  readonly amp: AmpFacts
  readonly fault: string
  /** Null until handed over: the line stays blank. */
  readonly collectedAt: string | null
  readonly collector: CollectorFacts | null
  readonly readingsBefore: ReadingSetFacts | null
  readonly readingsAfter: ReadingSetFacts | null
  /** Plate curves with the points before and after, one for each output group and type; empty where none are known. */
  readonly plots: readonly PlateSheet[]
  /** In chassis order. */
  readonly tubes: readonly FittedTubeFacts[]
  readonly matches: readonly MatchFacts[]
  /** A sentence for each tube fitted in place of the one that was quoted. */
  readonly exchanged: readonly string[]
  readonly workDone: readonly string[]
  readonly workDeclined: readonly string[]
  readonly itemsReturned: readonly CountedItem[]
  /** Empty with `oldPartsBack` true: there were none. */
  readonly oldParts: readonly OldPartFacts[]
  readonly oldPartsBack: boolean
  readonly signOff: readonly SignOffFacts[]
  /** Plain day; null: no warranty runs. */
  readonly warrantyUntil: string | null
  readonly warrantyTerms: string
  /** Plain day. */
  readonly recheckOn: string | null
  readonly total: Money
  readonly payments: readonly PaymentLine[]
  readonly paid: Money
  /** Still owed when positive. */
  readonly balance: Money
}

export function pickupPaper(pickup: PickupFacts): Paper {
  const { settings, outcome } = pickup
  const format = formatFor(settings)
  const v = vocabulary(settings.words)
  return {
    kind: 'pickup-sheet',
    title: v.pickupTitle,
    number: pickup.jobNumber,
    letterhead: settings.shop,
    issuedOn: format.instant(settings.issuedAt),
    size: settings.size,
    language: v.locale,
    blocks: [
      ...(outcome.kind === 'returned-unrepaired' ? [unrepairedBox(v, outcome.reason)] : []),
      handover(pickup, format, v),
      heading('Customer'),
      customerFacts(pickup.customer),
      heading('Amplifier'),
      ampFacts(pickup.amp, format, v),
      heading('Fault, in the customer’s words'),
      { type: 'paragraph', text: given(pickup.fault), tone: 'quoted' },
      ...listed('Work done', pickup.workDone, 'No work was done.'),
      ...listed('Work declined', pickup.workDeclined, 'Nothing was declined.'),
      ...readingBlocks(pickup.readingsBefore, pickup.readingsAfter, format, v),
      ...pickup.plots.map((sheet) => plotBlock(sheet, v)),
      ...fittedTubes(pickup, format, v),
      ...safety(pickup, format),
      ...handedBack(pickup, format),
      ...afterwards(pickup, format),
      ...payment(pickup, format),
      ...collectedFor(pickup),
      cautionsBlock(v, pickup.amp.fuse),
      signatures(pickup, format),
    ],
  }
}

function handover(pickup: PickupFacts, format: Format, v: Vocabulary): Block {
  const { collector, collectedAt } = pickup
  const by = collector === null ? 'not yet' : collector.isOwner ? `${collector.name} (owner)` : collector.name
  return facts(2, [
    fact(v.collected, collectedAt === null ? 'not yet' : format.instant(collectedAt)),
    fact('By', by),
    fact('Outcome', pickup.outcome.kind === 'repaired' ? 'repaired' : 'returned unrepaired'),
    fact('Balance', format.money(pickup.balance)),
  ])
}

function listed(title: string, lines: readonly string[], none: string): Block[] {
  const texts = lines.length === 0 ? [none] : lines
  return [heading(title), ...texts.map((text): Block => ({ type: 'paragraph', text, tone: 'plain' }))]
}

function fittedTubes(pickup: PickupFacts, format: Format, v: Vocabulary): Block[] {
  const title = heading(`${capital(v.tubes)} by socket`)
  if (pickup.tubes.length === 0)
    return [title, { type: 'paragraph', text: `No ${v.tubes} are on record.`, tone: 'plain' }]
  const columns = [column('Socket', 1), column('Type', 2), column('Mark', 2), column('Origin', 4)]
  const rows = pickup.tubes.map(({ position, type, mark, origin, used }) => ({
    cells: [position, given(type), mark === '' ? 'no mark' : mark, used ? `${origin} (used ${v.tube})` : origin],
  }))
  const matches = pickup.matches.map((match): Block => ({ type: 'note', text: matchText(match, format, v) }))
  const exchanged = pickup.exchanged.map((text): Block => ({ type: 'note', text }))
  return [title, plainTable(columns, rows), ...exchanged, ...matches]
}

/** After an unrepaired return only what was really looked at is shown, and not under the name of a safety test. */
function safety(pickup: PickupFacts, format: Format): Block[] {
  if (pickup.outcome.kind === 'repaired') return [heading('Safety sign-off'), signOffBlock(pickup.signOff, format)]
  const checked = pickup.signOff.filter(({ outcome }) => outcome === 'passed' || outcome === 'failed')
  if (checked.length === 0) return []
  return [heading('Checks made before the work stopped; no safety test'), signOffBlock(checked, format)]
}

function handedBack(pickup: PickupFacts, format: Format): Block[] {
  const items = pickup.itemsReturned.map(({ count, label }) => ({
    cells: [`${format.count(count)}${NO_BREAK}×`, label],
  }))
  const returned: Block =
    items.length === 0
      ? { type: 'paragraph', text: 'Nothing else was left, so nothing else goes back.', tone: 'plain' }
      : plainTable(COUNTED, items)
  return [heading('Handed back with the amplifier'), returned, heading('Old parts'), oldParts(pickup)]
}

function oldParts(pickup: PickupFacts): Block {
  if (!pickup.oldPartsBack) return { type: 'paragraph', text: 'Old parts were not asked for.', tone: 'plain' }
  if (pickup.oldParts.length === 0) return { type: 'paragraph', text: 'No parts were taken out.', tone: 'plain' }
  const rows = pickup.oldParts.map(({ bag, text }) => ({ cells: [bag, text] }))
  return plainTable([column('Bag', 2), column('Part', 8)], rows)
}

function afterwards(pickup: PickupFacts, format: Format): Block[] {
  const { warrantyUntil, recheckOn } = pickup
  const terms: Block[] =
    pickup.warrantyTerms.trim() === '' ? [] : [{ type: 'paragraph', text: pickup.warrantyTerms.trim(), tone: 'plain' }]
  return [
    heading('Warranty'),
    facts(2, [
      fact('Warranty until', warrantyUntil === null ? 'no warranty' : format.day(warrantyUntil)),
      fact('Re-check on', recheckOn === null ? 'none arranged' : format.dueDay(recheckOn)),
    ]),
    ...terms,
  ]
}

function payment(pickup: PickupFacts, format: Format): Block[] {
  const rows = pickup.payments.map(({ text, paidAt, amount }) => ({
    cells: [text, format.instantDay(paidAt), format.money(amount)],
  }))
  return [
    heading('Payment'),
    {
      type: 'table',
      columns: [column('Payment', 10), column('Paid on', 5), column('Amount', 4, 'end')],
      groups: [{ label: '', rows: rows.length === 0 ? [{ cells: ['No payment on record', '', ''] }] : rows }],
      totals: [
        { label: 'Total', value: format.money(pickup.total), strong: false },
        { label: 'Paid', value: format.money(pickup.paid), strong: false },
        { label: 'Balance', value: format.money(pickup.balance), strong: true },
      ],
    },
  ]
}

function collectedFor({ collector, customer }: PickupFacts): Block[] {
  if (collector === null || collector.isOwner) return []
  const text = `Collected by ${collector.name} for ${customer.name}. Identity shown: ${collector.identity ?? 'none'}.`
  return [{ type: 'note', text }]
}

function signatures({ collector, collectedAt }: PickupFacts, format: Format): Block {
  const date = collectedAt === null ? '' : format.instantDay(collectedAt)
  return {
    type: 'signatures',
    lines: [
      { label: 'Received as listed', name: collector?.name ?? '', date },
      { label: 'For the shop', name: '', date: '' },
    ],
  }
}
