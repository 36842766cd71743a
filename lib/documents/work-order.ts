/** The work order that lies beside the amplifier: what to do, with which tubes, and what to sign. */
import type { Money } from '@/lib/domain/money'
import type { Amps, Ratio, Volts, Watts } from '@/lib/domain/units'
import { cautionsBlock } from './cautions'
import type { AmpFacts, PaperSettings, SignOffFacts } from './facts'
import { type Format, formatFor, NO_BREAK } from './format'
import type { Block, ChassisLandmark, Paper } from './paper'
import { ampFacts, COUNTED, column, fact, facts, given, heading, plainTable, signOffBlock } from './shared-blocks'
import { capital, type Vocabulary, vocabulary } from './words'

export type ConsentFacts = {
  readonly by: string
  readonly at: string
  /** In words: "by phone, 555-0142". */
  readonly how: string
  readonly amount: Money
  readonly takenBy: string
}
export type WorkSocketFacts = {
  readonly position: string
  readonly role: string
  readonly type: string
  /** In words: "grid-supplied", "cathode-resistor"; empty where it has none. */
  readonly biasKind: string
  /** Type and mark, or empty. */
  readonly tubeNow: string
  /** Null: the tube stays. */
  readonly tubeToFit: { readonly mark: string; readonly type: string } | null
  /** Place on the chassis: 0–100 left to right, 0–100 rear to front; null when not drawn. */
  readonly place: { readonly across: number; readonly depth: number } | null
}
export type OperationFacts = { readonly text: string; readonly detail: string; readonly done: boolean }
export type PartFacts = {
  /** Quantity times 1000. */
  readonly thousandths: number
  readonly text: string
  readonly used: boolean
  /** Where it lies, or "2 needed, 1 free: order 1"; empty for what is not of the drawers. */
  readonly note: string
}
export type IdleTargetFacts = {
  readonly position: string
  readonly type: string
  readonly rating: Watts
  readonly lowestShare: Ratio
  readonly highestShare: Ratio
  /** Plate to cathode, as last read; null before the first reading. */
  readonly plateVoltage: Volts | null
  readonly lowestCurrent: Amps | null
  readonly highestCurrent: Amps | null
  /** Where the target comes from: "common practice, class AB". */
  readonly basis: string
}

export type WorkOrderFacts = {
  readonly settings: PaperSettings
  readonly jobNumber: string
  readonly jobUrl: string
  /** Plain day. */
  readonly promisedOn: string | null
  readonly customerName: string
  readonly customerPhone: string
  readonly amp: AmpFacts
  readonly fault: string
  readonly spendingLimit: Money | null
  /** Newest last; empty when nobody has agreed to anything yet. */
  readonly consents: readonly ConsentFacts[]
  /** In chassis order. */
  readonly sockets: readonly WorkSocketFacts[]
  readonly landmarks: readonly ChassisLandmark[]
  readonly operations: readonly OperationFacts[]
  readonly parts: readonly PartFacts[]
  /** A sentence for each tube that stands in for the one that was quoted. */
  readonly exchanged: readonly string[]
  readonly idleTargets: readonly IdleTargetFacts[]
  readonly signOff: readonly SignOffFacts[]
}

export function workOrderPaper(order: WorkOrderFacts): Paper {
  const { settings } = order
  const format = formatFor(settings)
  const v = vocabulary(settings.words)
  return {
    kind: 'work-order',
    title: 'Work order',
    number: order.jobNumber,
    letterhead: settings.shop,
    issuedOn: format.instant(settings.issuedAt),
    size: settings.size,
    language: v.locale,
    blocks: [
      { type: 'qr', text: order.jobUrl, caption: `Job ${order.jobNumber}` },
      facts(2, [
        fact('Promised', order.promisedOn === null ? 'no date promised' : format.dueDay(order.promisedOn)),
        fact('Customer', order.customerName),
        fact('Spending limit', order.spendingLimit === null ? 'none: ask first' : format.money(order.spendingLimit)),
        fact('Phone', order.customerPhone),
      ]),
      consents(order, format),
      cautionsBlock(v, order.amp.fuse),
      heading('Amplifier'),
      ampFacts(order.amp, format, v),
      heading('Fault, in the customer’s words'),
      { type: 'paragraph', text: given(order.fault), tone: 'quoted' },
      ...chassis(order),
      ...socketTable(order.sockets, v),
      ...order.exchanged.map((text): Block => ({ type: 'note', text })),
      ...idleTargets(order.idleTargets, format, v),
      heading('Operations'),
      ...operations(order.operations),
      heading('Parts'),
      ...parts(order.parts, format),
      heading('Safety sign-off'),
      { type: 'note', text: 'A failed or empty line blocks release. A line not tested says why, and that is printed.' },
      signOffBlock(order.signOff, format),
    ],
  }
}

function consents(order: WorkOrderFacts, format: Format): Block {
  if (order.consents.length === 0) return facts(1, [fact('Consent', 'none recorded')])
  const lines = order.consents.map(({ by, at, how, amount, takenBy }) =>
    fact('Consent', `${format.money(amount)}: ${by}, ${format.instant(at)}, ${how}; taken by ${takenBy}`),
  )
  return facts(1, lines)
}

/** The drawing is left out when no socket has a place. */
function chassis(order: WorkOrderFacts): Block[] {
  const sockets = order.sockets.flatMap(({ position, place, type, tubeToFit }) =>
    place === null
      ? []
      : [{ position, ...place, lines: tubeToFit === null ? [given(type)] : [tubeToFit.type, `fit ${tubeToFit.mark}`] }],
  )
  if (sockets.length === 0) return []
  return [
    heading('Chassis from above'),
    { type: 'chassis', caption: 'Rear at the top, controls at the bottom.', sockets, landmarks: order.landmarks },
  ]
}

function socketTable(sockets: readonly WorkSocketFacts[], v: Vocabulary): Block[] {
  const title = heading('Sockets, in chassis order')
  if (sockets.length === 0) return [title, { type: 'paragraph', text: 'No sockets on the sheet yet.', tone: 'plain' }]
  const columns = [
    column('Socket', 1.4),
    column('Role', 3),
    column('Type', 2),
    column('Bias', 3),
    column(`${capital(v.tube)} now`, 3),
    column(`${capital(v.tube)} to fit`, 3.4),
  ]
  const rows = sockets.map((socket) => ({
    cells: [
      socket.position,
      socket.role,
      socket.type,
      socket.biasKind,
      given(socket.tubeNow),
      socket.tubeToFit === null ? 'stays' : `${socket.tubeToFit.type}, mark ${socket.tubeToFit.mark}`,
    ],
  }))
  return [title, plainTable(columns, rows)]
}

function idleTargets(targets: readonly IdleTargetFacts[], format: Format, v: Vocabulary): Block[] {
  if (targets.length === 0) return []
  const columns = [
    column('Socket', 1.4),
    column('Type', 2),
    column('Rating', 1.6, 'end'),
    column('Share of rating', 2.6, 'end'),
    column(`At ${v.plate} to cathode`, 2.4, 'end'),
    column(`Idle ${v.plate} current`, 3, 'end'),
    column('Basis', 4),
  ]
  const rows = targets.map((target) => ({
    cells: [
      target.position,
      target.type,
      format.settled(target.rating, 'W'),
      `${format.percent(target.lowestShare)} to ${format.percent(target.highestShare)}`,
      target.plateVoltage === null ? 'not read yet' : format.volts(target.plateVoltage),
      currentRange(target, format),
      target.basis,
    ],
  }))
  return [heading('Target idle values'), plainTable(columns, rows)]
}

function currentRange(target: IdleTargetFacts, format: Format): string {
  if (target.lowestCurrent === null || target.highestCurrent === null) return 'after a reading'
  return `${format.milliamps(target.lowestCurrent)} to ${format.milliamps(target.highestCurrent)}`
}

function operations(items: readonly OperationFacts[]): Block[] {
  if (items.length === 0) return [{ type: 'paragraph', text: 'No operations are ordered.', tone: 'plain' }]
  return [{ type: 'checklist', items: items.map(({ text, detail, done }) => ({ text, detail, ticked: done })) }]
}

function parts(items: readonly PartFacts[], format: Format): Block[] {
  if (items.length === 0) return [{ type: 'paragraph', text: 'No parts are ordered.', tone: 'plain' }]
  const rows = items.map(({ thousandths, text, used, note }) => ({
    cells: [
      `${format.quantity(thousandths)}${NO_BREAK}×`,
      [used ? `${text} (used part)` : text, note].filter(Boolean).join('; '),
    ],
  }))
  return [plainTable(COUNTED, rows)]
}
