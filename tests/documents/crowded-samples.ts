/** The hardest papers a shop could print: long names, empty values, many lines, large amounts. */

import type { PaperSettings } from '@/lib/documents/facts'
import type { PickupFacts } from '@/lib/documents/pickup-sheet'
import type { QuoteFacts } from '@/lib/documents/quote-paper'
import type { ReceiptFacts } from '@/lib/documents/receipt'
import { samplePickup, sampleQuote, sampleReceipt, sampleSettings, sampleWorkOrder } from '@/lib/documents/samples'
import type { WorkOrderFacts } from '@/lib/documents/work-order'
import { lineAmount, money, sum, taxOn } from '@/lib/domain/money'
import type { PlotReading } from '@/lib/domain/plot/operating-point'
import { type PlateSheet, plateSheet } from '@/lib/domain/plot/plate-sheet'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'

export const SIXTY = 'Aurelianissima-Konstantinopolitana Featherstonehaugh-Wetherby'
export const ONE_WORD = 'Hottentottenstottertrottelmutterbeutelrattenlattengitter'.repeat(3)
const LONG = 'It hums, then it does not, and then it hums again with the volume down. '.repeat(45).trim()

const settings: PaperSettings = {
  ...sampleSettings('UK'),
  locale: 'de-DE',
  currency: 'EUR',
  shop: {
    name: `${SIXTY} and Daughters`,
    addressLines: ['', SIXTY, SIXTY],
    phone: '',
    email: `${ONE_WORD}@shop.example`,
  },
}
const customer = {
  name: SIXTY,
  addressLines: [SIXTY, ONE_WORD],
  phone: '',
  email: `${ONE_WORD}@mail.example`,
  preferredContact: '',
}
const amp = { make: SIXTY, model: ONE_WORD, serial: '', mainsVoltage: null, protectionClass: null, fuse: '' }
const many = <T>(count: number, make: (i: number) => T): T[] => Array.from({ length: count }, (_, i) => make(i))

export const crowdedReceipt = (): ReceiptFacts => ({
  ...sampleReceipt('UK'),
  settings,
  customer,
  amp,
  fault: `${LONG}\n${ONE_WORD}`,
  itemsLeft: many(30, (i) => ({ count: i + 1, label: i % 7 === 0 ? `${ONE_WORD} ${i}` : `loose item ${i}` })),
  spendingLimit: null,
  promisedOn: null,
  depositPaid: null,
  terms: LONG.repeat(2),
  tubesReceived: many(14, (i) => ({ position: `V${i + 1}`, type: '', mark: i === 3 ? SIXTY : '' })),
})

export function crowdedQuote(): QuoteFacts {
  const sample = sampleQuote('UK')
  const labour = many(40, (i) => ({
    text:
      i % 9 === 0
        ? `${ONE_WORD} ${i}`
        : `Operation ${i}, with words enough to run over one line of the column and more`,
    detail: i % 4 === 0 ? LONG.slice(0, 300) : '',
    thousandths: 123_456,
    unit: 'h',
    unitPrice: money(99_999_99),
    amount: lineAmount(money(99_999_99), 123_456),
    used: i % 5 === 0,
  }))
  const subtotal = sum(labour.map(({ amount }) => amount))
  const tax = taxOn(subtotal, 19_000)
  return {
    ...sample,
    settings,
    customer,
    amp,
    findings: [LONG, '', ONE_WORD],
    labour,
    parts: [],
    tubes: many(14, (i) => ({
      mark: `LS-${i}-${SIXTY}`,
      type: '6L6GC',
      position: '',
      condition: '',
      used: true,
      test: null,
      price: money(i),
    })),
    matches: [],
    subtotal,
    tax: { name: 'Mehrwertsteuer', milliPercent: 19_000, amount: tax },
    total: sum([subtotal, tax]),
    depositDue: null,
    optional: many(12, (i) => ({ text: `${SIXTY} ${i}`, amount: i % 2 === 0 ? null : money(i * 1000) })),
    declined: [],
    warranty: '',
    howToAnswer: '',
  }
}

export function crowdedWorkOrder(): WorkOrderFacts {
  const sample = sampleWorkOrder('UK')
  const [consent] = sample.consents
  const [line] = sample.signOff
  if (consent === undefined || line === undefined) throw new Error('The sample has a consent and a safety line')
  return {
    ...sample,
    settings,
    amp,
    customerName: SIXTY,
    customerPhone: '',
    fault: LONG,
    consents: many(6, () => ({ ...consent, by: SIXTY, how: LONG.slice(0, 200) })),
    sockets: many(14, (i) => ({
      position: i === 10 ? 'left driver' : `V${i + 1}`,
      role: i === 5 ? ONE_WORD : 'phase inverter and driver',
      type: '6L6GC',
      biasKind: i % 2 === 0 ? 'cathode-resistor' : '',
      tubeNow: i === 2 ? SIXTY : '',
      tubeToFit: { mark: `LS-${1000 + i}`, type: '6L6GC' },
      place: { across: (i / 13) * 100, depth: i === 7 ? 140 : 50 + (i % 2) * 8 },
    })),
    operations: many(25, (i) => ({
      text: i % 6 === 0 ? `${ONE_WORD} ${i}` : `Step ${i}`,
      detail: LONG.slice(0, 150),
      done: i % 2 === 0,
    })),
    parts: many(25, (i) => ({
      thousandths: 12_345_678,
      text: `part ${i}`,
      used: i % 2 === 0,
      note: i % 3 === 0 ? LONG.slice(0, 80) : '',
    })),
    idleTargets: many(14, (i) => ({
      ...(sample.idleTargets[0] as WorkOrderFacts['idleTargets'][number]),
      position: `V${i + 1}`,
      plateVoltage: null,
      lowestCurrent: null,
      highestCurrent: null,
    })),
    signOff: many(22, (i) => ({
      ...line,
      line: `Line ${i} ${i === 4 ? ONE_WORD : ''}`,
      limit: i === 9 ? LONG.slice(0, 180) : '≤ 0.3 Ω',
    })),
  }
}

/** Fourteen points nearly on top of each other, and the same with a load line. */
function crowdedPlots(points: PlateSheet['points']): PlateSheet[] {
  const readings = many(14, (i): PlotReading => {
    const { at, box } = points[0] as PlateSheet['points'][number]
    const band = (value: number, half: number) => ({
      value,
      standardUncertainty: half / 2,
      plusMinus: half,
      low: value - half,
      high: value + half,
      estimate: true,
    })
    return {
      when: i % 2 === 0 ? 'before' : 'after',
      idle: {
        socket: `V${i + 1} ${i === 3 ? 'left driver' : ''}`,
        plateToCathodeVolts: band(at.across + i / 10, (box.right - box.left) / 2),
        plateAmps: band((at.up + i / 5) / 1000, (box.top - box.bottom) / 2000),
        plateWatts: band(20, 1),
      },
      screenToCathode: null,
      gridToCathode: null,
    }
  })
  const rating = { watts: 30, system: 'design-maximum' } as const
  return [null, { ohms: 4200, arrangement: 'push-pull', tubesPerSide: 7 } as const].flatMap((load) => {
    const drawn = plateSheet({ typeId: '6L6', designation: ONE_WORD, rating, readings, load, catalogue: HANDBOOK_ONLY })
    return drawn.ok ? [drawn.value] : []
  })
}

export function crowdedPickup(): PickupFacts {
  const sample = samplePickup('UK')
  const grown = (set: PickupFacts['readingsBefore']): PickupFacts['readingsBefore'] =>
    set === null
      ? null
      : {
          ...set,
          takenBy: SIXTY,
          methods: [LONG.slice(0, 200), SIXTY],
          wallVoltage: null,
          warmUp: null,
          sockets: many(14, (i) => ({
            position: `V${i + 1}`,
            type: '6L6GC',
            plateVoltage: i === 3 ? null : (set.sockets[0]?.plateVoltage ?? null),
            plateCurrent: i === 4 ? null : (set.sockets[0]?.plateCurrent ?? null),
            plateDissipation: i === 5 ? null : (set.sockets[0]?.plateDissipation ?? null),
            shareOfRating: i === 6 ? null : (set.sockets[0]?.shareOfRating ?? null),
            verdict: i === 7 ? LONG.slice(0, 200) : 'uncertain: the band crosses the limit',
            estimated: i > 8,
          })),
        }
  return {
    ...sample,
    settings,
    customer,
    amp,
    fault: '',
    outcome: { kind: 'returned-unrepaired', reason: LONG },
    collector: { name: SIXTY, isOwner: false, identity: null },
    collectedAt: null,
    readingsBefore: grown(sample.readingsBefore),
    readingsAfter: grown(sample.readingsAfter),
    plots: sample.plots.flatMap(({ points }) => crowdedPlots(points)),
    tubes: many(14, (i) => ({
      position: `V${i + 1}`,
      type: '',
      mark: i === 2 ? SIXTY : '',
      origin: SIXTY,
      used: true,
    })),
    workDone: [],
    workDeclined: many(20, (i) => `${SIXTY} ${i}`),
    itemsReturned: [],
    oldParts: many(20, (i) => ({ bag: `V${i}`, text: ONE_WORD })),
    signOff: sample.signOff.map((line, i) => ({
      ...line,
      outcome: i === 1 ? ('failed' as const) : line.outcome,
      name: SIXTY,
    })),
    payments: [],
    balance: money(-1234),
  }
}
