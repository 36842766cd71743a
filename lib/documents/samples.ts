/**
 * Sample facts for previews and tests: an invented shop in an invented town,
 * with invented people, makers and models. Amounts come from the money rules, so
 * they add up.
 */

import { depositOf, lineAmount, type Money, money, sum, taxOn } from '@/lib/domain/money'
import type { PlotReading } from '@/lib/domain/plot/operating-point'
import { type PlateSheet, plateSheet } from '@/lib/domain/plot/plate-sheet'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import { amps, ratio, seconds, siemens, volts, watts } from '@/lib/domain/units'
import type {
  AmpFacts,
  CustomerFacts,
  MatchFacts,
  PaperSettings,
  ReadingSetFacts,
  SignOffFacts,
  SocketReadingFacts,
  TestPoint,
  TubeTestFacts,
  Words,
} from './facts'
import type { PickupFacts } from './pickup-sheet'
import type { QuotedLine, QuoteFacts } from './quote-paper'
import type { ReceiptFacts } from './receipt'
import type { WorkOrderFacts, WorkSocketFacts } from './work-order'

const US_SETTINGS: PaperSettings = {
  shop: {
    name: 'Lantern Street Amplifier Works',
    addressLines: ['14 Lantern Street', 'Port Ellery, ME 04999'],
    phone: '207-555-0142',
    email: 'bench@lanternstreet.example',
  },
  size: 'LETTER',
  words: 'US',
  locale: 'en-US',
  zone: 'America/New_York',
  currency: 'USD',
  issuedAt: '2026-10-08T17:05:00Z',
}
const UK_SETTINGS: PaperSettings = {
  shop: {
    name: 'Lantern Street Amplifier Works',
    addressLines: ['14 Lantern Street', 'Port Ellery', 'PE99 9ZZ'],
    phone: '01632 960142',
    email: 'bench@lanternstreet.example',
  },
  size: 'A4',
  words: 'UK',
  locale: 'en-GB',
  zone: 'Europe/London',
  currency: 'GBP',
  issuedAt: '2026-10-08T17:05:00Z',
}
export const sampleSettings = (words: Words): PaperSettings => (words === 'US' ? US_SETTINGS : UK_SETTINGS)

const JOB = '1047-0'
const JOB_URL = 'https://bench.lanternstreet.example/jobs/1047-0'

export const sampleCustomer: CustomerFacts = {
  name: 'Imre Thistlewood',
  addressLines: ['3 Cooper’s Rise', 'Port Ellery'],
  phone: '207-555-0177',
  email: 'imre@thistlewood.example',
  preferredContact: 'phone, after five',
}
const sampleAmp = (words: Words): AmpFacts => ({
  make: 'Crakewell',
  model: 'Hollowmere 50',
  serial: 'HM-50-2281',
  mainsVoltage: volts(words === 'US' ? 120 : 230),
  protectionClass: 'I',
  fuse: words === 'US' ? 'T 3 A' : 'T 1.6 A',
})
const FAULT =
  'Hums after twenty minutes, then the left side of the sound goes thin. Worse with the presence turned up. One tube glows brighter than the other.'

export function sampleReceipt(words: Words): ReceiptFacts {
  return {
    settings: sampleSettings(words),
    jobNumber: JOB,
    jobUrl: JOB_URL,
    receivedAt: '2026-10-08T17:02:00Z',
    receivedBy: 'Dara Quennell',
    customer: sampleCustomer,
    amp: sampleAmp(words),
    fault: FAULT,
    itemsLeft: [
      { count: 1, label: 'footswitch, two buttons, grey cable' },
      { count: 1, label: 'canvas cover, torn at one corner' },
      { count: 2, label: 'spare output tubes in one box' },
    ],
    spendingLimit: money(25000),
    promisedOn: '2026-10-22',
    oldPartsBack: true,
    depositPaid: money(6000),
    terms:
      'The bench fee is credited to the work if it goes ahead. Work stops before the spending limit is passed and goes on only with your consent. Amplifiers not collected within 90 days of our notice are charged for storage. Photographs are taken for the job record only.',
    tubesReceived: [
      { position: 'V1', type: '12AX7', mark: '' },
      { position: 'V2', type: '12AX7', mark: 'customer’s label “quiet one”' },
      { position: 'V3', type: '6L6GC', mark: '' },
      { position: 'V4', type: '6L6GC', mark: '' },
    ],
  }
}

const TEST_POINT: TestPoint = { plateVoltage: volts(400), screenVoltage: volts(400), gridVoltage: volts(-36) }
const sampleTest = (milliamps: number, milliampsPerVolt: number): TubeTestFacts => ({
  testedOn: '2026-09-17',
  instrument: 'tube tester no. 2',
  testPoint: TEST_POINT,
  sections: [{ plateCurrent: amps(milliamps / 1000), transconductance: siemens(milliampsPerVolt / 1000) }],
})
const MATCH: MatchFacts = {
  marks: ['LS-0412', 'LS-0419'],
  type: '6L6GC',
  testedFrom: '2026-09-17',
  testedTo: '2026-09-17',
  instrument: 'tube tester no. 2',
  testPoint: TEST_POINT,
  plateCurrentSpread: amps(0.0008),
  plateCurrentTolerance: amps(0.005),
  transconductanceSpread: ratio(0.03),
  transconductanceTolerance: ratio(0.1),
}

type LineInput = { text: string; detail?: string; thousandths: number; unit: string; price: number; used?: boolean }
const quotedLine = ({ text, detail = '', thousandths, unit, price, used = false }: LineInput): QuotedLine => {
  const unitPrice = money(price)
  return { text, detail, thousandths, unit, unitPrice, amount: lineAmount(unitPrice, thousandths), used }
}

export function sampleQuote(words: Words): QuoteFacts {
  const labour = [
    quotedLine({ text: 'Find and cure hum in the bias supply', thousandths: 1250, unit: 'h', price: 9500 }),
    quotedLine({ text: 'Set idle, warm up, set again', thousandths: 1000, unit: 'flat', price: 4500 }),
    quotedLine({ text: 'Match output pair', thousandths: 1000, unit: 'set', price: 1200 }),
  ]
  const parts = [
    quotedLine({ text: 'Bias filter capacitor, 100 µF 100 V', thousandths: 2000, unit: 'pc', price: 385 }),
    quotedLine({
      text: 'Octal socket, ceramic',
      detail: 'Taken from a scrapped chassis, contacts cleaned and tightened.',
      thousandths: 1000,
      unit: 'pc',
      price: 600,
      used: true,
    }),
  ]
  const tubes = [
    { mark: 'LS-0412', position: 'V3', test: sampleTest(36.4, 5.32) },
    { mark: 'LS-0419', position: 'V4', test: sampleTest(35.6, 5.18) },
  ].map((tube) => ({ ...tube, type: '6L6GC', condition: 'current production', used: false, price: money(4200) }))
  const subtotal = sum([...labour, ...parts].map(({ amount }) => amount).concat(tubes.map(({ price }) => price)))
  const milliPercent = words === 'US' ? 5500 : 20000
  const tax = taxOn(subtotal, milliPercent)
  const total = sum([subtotal, tax])
  return {
    settings: sampleSettings(words),
    number: 'Q-1047-0',
    revision: 1,
    jobNumber: JOB,
    validUntil: '2026-10-22',
    customer: sampleCustomer,
    amp: sampleAmp(words),
    findings: [
      'Grid voltage on V3 falls from −38.2 V to −34.9 V in twenty minutes: the bias filter capacitor leaks.',
      'V4 idles at 61.5 mA and 418 V, 25.7 W, 86 % of its rating: hotter than the limit of 70 % for this circuit.',
      'V1, V2 and the phase inverter read within their limits and stay.',
    ],
    note: [],
    labour,
    parts,
    fees: [],
    tubes,
    matches: [MATCH],
    subtotal,
    tax: { name: words === 'US' ? 'Sales tax' : 'VAT', milliPercent, amount: tax },
    total,
    depositDue: depositOf(total, 30),
    optional: [{ text: 'Three-core line cord with strain relief', amount: money(4800) }],
    declined: [{ text: 'New reverb tank', amount: money(5600) }],
    warranty: 'Work and parts 90 days; new tubes 180 days from pickup. The very tube, by its mark, is needed back.',
    howToAnswer: 'Reply to the mail or call the shop, and say yes or no to this number. Your answer is written down.',
  }
}

const LINES: readonly (readonly [string, string, string, string, string])[] = [
  ['Discharge proved', '≤ 50 V, meter', '2 V after 40 s', 'bench meter 1', '2026-03-02'],
  ['Fuse, type and value', 'as marked', 'as marked', '', ''],
  ['Protective conductor', '≤ 0.3 Ω', '0.11 Ω', 'safety tester', '2026-05-11'],
  ['Insulation at 500 V', '≥ 1.0 MΩ', '48 MΩ', 'safety tester', '2026-05-11'],
  ['Protective conductor current', '≤ 3.5 mA', '0.42 mA', 'safety tester', '2026-05-11'],
  ['Idle within limit', '≤ 70 %', '55 %', 'bench meter 1', '2026-03-02'],
]
export const openSignOff: readonly SignOffFacts[] = [...LINES.map(([line, limit]) => ({ line, limit }))]
  .concat([
    { line: 'Full power into dummy load', limit: '10 min, no fault' },
    { line: 'Soak, then second reading', limit: '≥ 1 h' },
  ])
  .map((line) => ({
    ...line,
    outcome: 'open',
    value: '',
    instrument: '',
    calibratedOn: null,
    name: '',
    signedAt: null,
  }))

const signedSignOff: readonly SignOffFacts[] = openSignOff.map((line, i) => {
  const [, , value = '', instrument = '', calibrated = ''] = LINES[i] ?? []
  const signed = { name: 'Olwen Pascarel', signedAt: `2026-10-20T1${i}:10:00Z` }
  if (value === '')
    return {
      ...line,
      ...signed,
      outcome: 'not-tested',
      value: 'the dummy load is out for repair; two hours of listening at stage level instead',
    }
  return {
    ...line,
    ...signed,
    outcome: 'passed',
    value,
    instrument,
    calibratedOn: calibrated === '' ? null : calibrated,
  }
})

const SOCKETS: readonly WorkSocketFacts[] = [
  { position: 'V1', role: 'preamp', type: '12AX7', biasKind: 'cathode-resistor', place: { across: 90, depth: 66 } },
  {
    position: 'V2',
    role: 'phase inverter',
    type: '12AX7',
    biasKind: 'cathode-resistor',
    place: { across: 70, depth: 62 },
  },
  { position: 'V3', role: 'output', type: '6L6GC', biasKind: 'grid-supplied', place: { across: 52, depth: 55 } },
  { position: 'V4', role: 'output', type: '6L6GC', biasKind: 'grid-supplied', place: { across: 34, depth: 55 } },
  { position: 'V5', role: 'rectifier', type: '5AR4', biasKind: '', place: { across: 14, depth: 55 } },
].map((socket, i) => ({
  ...socket,
  tubeNow: i === 1 ? '12AX7, “quiet one”' : `${socket.type}, no mark`,
  tubeToFit: socket.role === 'output' ? { type: '6L6GC', mark: i === 2 ? 'LS-0412' : 'LS-0419' } : null,
}))

export function sampleWorkOrder(words: Words): WorkOrderFacts {
  return {
    settings: sampleSettings(words),
    jobNumber: JOB,
    jobUrl: JOB_URL,
    promisedOn: '2026-10-22',
    customerName: sampleCustomer.name,
    customerPhone: sampleCustomer.phone,
    amp: sampleAmp(words),
    fault: FAULT,
    spendingLimit: money(25000),
    consents: [
      {
        by: sampleCustomer.name,
        at: '2026-10-12T21:20:00Z',
        how: 'by phone, 207-555-0177',
        amount: sampleQuote(words).total,
        takenBy: 'Dara Quennell',
      },
    ],
    sockets: SOCKETS,
    landmarks: [
      { label: 'power transformer', across: 14, depth: 8, width: 20, height: 30 },
      { label: 'output transformer', across: 56, depth: 8, width: 18, height: 28 },
    ],
    operations: [
      { text: 'Replace both bias filter capacitors', detail: 'watch polarity: positive to chassis', done: true },
      { text: 'Replace the socket of V4', detail: '', done: false },
      { text: 'Fit LS-0412 in V3 and LS-0419 in V4; set idle, warm up 15 minutes, set again', detail: '', done: false },
    ],
    parts: [
      {
        thousandths: 2000,
        text: 'Bias filter capacitor, 100 µF 100 V',
        used: false,
        note: '2 needed, 1 free: order 1',
      },
      { thousandths: 1000, text: 'Octal socket, ceramic', used: true, note: 'drawer B2' },
    ],
    exchanged: [],
    idleTargets: ['V3', 'V4'].map((position) => ({
      position,
      type: '6L6GC',
      rating: watts(30),
      lowestShare: ratio(0.5),
      highestShare: ratio(0.7),
      plateVoltage: volts(425),
      // 15 W and 21 W at 425 V.
      lowestCurrent: amps(15 / 425),
      highestCurrent: amps(21 / 425),
      basis: 'common practice, grid-supplied class AB',
    })),
    signOff: openSignOff,
  }
}

type ReadingInput = { position: string; type: string; plateVolts: number; milliamps: number; ratingWatts: number }
function sampleReading(input: ReadingInput, verdict: string): SocketReadingFacts {
  const { position, type, plateVolts, milliamps, ratingWatts } = input
  const power = (plateVolts * milliamps) / 1000
  return {
    position,
    type,
    plateVoltage: volts(plateVolts),
    plateCurrent: { value: amps(milliamps / 1000), half: amps((milliamps * 0.03) / 1000) },
    plateDissipation: { value: watts(power), half: watts(power * 0.035) },
    shareOfRating: { value: ratio(power / ratingWatts), half: ratio((power * 0.035) / ratingWatts) },
    verdict,
  }
}
const sampleReadings = (words: Words, takenAt: string, sockets: readonly SocketReadingFacts[]): ReadingSetFacts => ({
  takenAt,
  takenBy: 'Olwen Pascarel',
  methods: ['1 Ω in each cathode, screen share taken off'],
  instruments: ['bench meter 1, cal. Mar 2, 2026'],
  wallVoltage: volts(words === 'US' ? 121.4 : 238),
  warmUp: seconds(900),
  signal: 'no signal',
  sockets,
})
const output = (position: string, plateVolts: number, milliamps: number): ReadingInput => ({
  position,
  type: '6L6GC',
  plateVolts,
  milliamps,
  ratingWatts: 30,
})

const banded = (value: number, share: number) => ({
  value,
  standardUncertainty: (value * share) / 2,
  plusMinus: value * share,
  low: value * (1 - share),
  high: value * (1 + share),
  estimate: false,
})

function samplePoint(when: 'before' | 'after', { position, plateVolts, milliamps }: ReadingInput): PlotReading {
  return {
    when,
    idle: {
      socket: position,
      plateToCathodeVolts: banded(plateVolts, 0.006),
      plateAmps: banded(milliamps / 1000, 0.03),
      plateWatts: banded((plateVolts * milliamps) / 1000, 0.035),
    },
    screenToCathode: plateVolts - 8,
    gridToCathode: null,
  }
}

/** Of the 6L6GC of the sample readings. */
export function samplePlot(readings: readonly PlotReading[]): PlateSheet[] {
  const rating = { watts: 30, system: 'design-maximum' } as const
  const drawn = plateSheet({
    typeId: '6L6',
    designation: '6L6GC',
    rating,
    readings,
    load: null,
    catalogue: HANDBOOK_ONLY,
  })
  return drawn.ok ? [drawn.value] : []
}

const BEFORE = [output('V3', 418, 48.2), output('V4', 418, 61.5)] as const
const AFTER = [output('V3', 425, 38.9), output('V4', 425, 38.3)] as const
const pointsBefore = BEFORE.map((reading) => samplePoint('before', reading))

export function samplePickup(words: Words): PickupFacts {
  const { total, depositDue } = sampleQuote(words)
  const deposit = depositDue ?? money(0)
  const rest = sum([total, money(-deposit)])
  return {
    settings: { ...sampleSettings(words), issuedAt: '2026-10-21T20:30:00Z' },
    jobNumber: JOB,
    outcome: { kind: 'repaired' },
    customer: sampleCustomer,
    amp: sampleAmp(words),
    fault: FAULT,
    collectedAt: '2026-10-21T20:31:00Z',
    collector: { name: 'Maud Thistlewood', isOwner: false, identity: 'driving license, seen by Dara Quennell' },
    readingsBefore: sampleReadings(words, '2026-10-09T14:10:00Z', [
      sampleReading(BEFORE[0], 'uncertain: the band crosses 70 %'),
      sampleReading(BEFORE[1], 'over: hotter than the limit'),
    ]),
    readingsAfter: sampleReadings(words, '2026-10-20T17:45:00Z', [
      sampleReading(AFTER[0], 'within'),
      sampleReading(AFTER[1], 'within'),
    ]),
    plots: samplePlot([...pointsBefore, ...AFTER.map((reading) => samplePoint('after', reading))]),
    tubes: SOCKETS.map(({ position, type, tubeToFit }) => ({
      position,
      type,
      mark: tubeToFit?.mark ?? '',
      origin: tubeToFit === null ? 'as received' : 'fitted new',
      used: false,
    })),
    matches: [MATCH],
    exchanged: [],
    workDone: [
      'Bias filter capacitors replaced; grid voltage now steady within 0.1 V over an hour.',
      'Socket of V4 replaced by a used one, contacts tightened. Output pair fitted, idle set twice.',
    ],
    workDeclined: ['New reverb tank. Three-core line cord advised and declined.'],
    itemsReturned: sampleReceipt(words).itemsLeft,
    oldParts: [
      { bag: 'V3', text: '6L6GC as received' },
      { bag: 'V4', text: '6L6GC as received, socket' },
      { bag: 'supply', text: 'two bias filter capacitors' },
    ],
    oldPartsBack: true,
    signOff: signedSignOff,
    warrantyUntil: '2027-01-19',
    warrantyTerms:
      'Work and parts 90 days; new tubes 180 days from pickup. The very tube, by its mark, is needed back.',
    recheckOn: '2026-11-18',
    total,
    payments: [
      { text: 'Deposit, card', paidAt: '2026-10-12T21:25:00Z', amount: deposit },
      { text: 'Balance, card', paidAt: '2026-10-21T20:29:00Z', amount: rest },
    ],
    paid: total,
    balance: money(0),
  }
}

export function sampleUnrepaired(words: Words): PickupFacts {
  const fee: Money = money(6000)
  return {
    ...samplePickup(words),
    outcome: { kind: 'returned-unrepaired', reason: 'The customer declined quote Q-1047-0 rev. 1.' },
    readingsAfter: null,
    plots: samplePlot(pointsBefore),
    matches: [],
    tubes: SOCKETS.map(({ position, type }) => ({ position, type, mark: '', origin: 'as received', used: false })),
    workDone: ['Looked at, read and quoted. Nothing was changed.'],
    workDeclined: ['All of quote Q-1047-0 rev. 1.'],
    oldParts: [],
    signOff: openSignOff,
    warrantyUntil: null,
    warrantyTerms: '',
    recheckOn: null,
    total: fee,
    payments: [{ text: 'Bench fee, card', paidAt: '2026-10-21T20:29:00Z', amount: fee }],
    paid: fee,
  }
}
