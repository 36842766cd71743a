import { describe, expect, test } from 'vitest'
import { quoteMail } from '@/lib/documents/mail-body'
import type { Paper } from '@/lib/documents/paper'
import { paperText } from '@/lib/documents/paper-text'
import { pickupPaper } from '@/lib/documents/pickup-sheet'
import { quotePaper } from '@/lib/documents/quote-paper'
import { receiptPaper } from '@/lib/documents/receipt'
import { samplePickup, sampleQuote, sampleReceipt, sampleUnrepaired, sampleWorkOrder } from '@/lib/documents/samples'
import { workOrderPaper } from '@/lib/documents/work-order'
import { money } from '@/lib/domain/money'

/** Every one of these stands in the text of the paper; the ones that do not are listed. */
const missing = (paper: Paper, facts: readonly string[]): string[] => {
  const text = paperText(paper)
  return facts.filter((fact) => !text.includes(fact))
}
const SHOP = ['Lantern Street Amplifier Works', '14 Lantern Street', '207-555-0142', 'bench@lanternstreet.example']
const OWNER = [
  'Imre Thistlewood',
  '3 Cooper’s Rise, Port Ellery',
  '207-555-0177',
  'imre@thistlewood.example',
  'phone, after five',
]
const AMP = ['Crakewell', 'Hollowmere 50', 'HM-50-2281', 'Line voltage: 120 V', 'class I', 'T 3 A']

describe('receipt', () => {
  test('carries every fact of the intake', () => {
    const facts = [
      '1047-0',
      'Oct 8, 2026, 1:02 PM',
      'Dara Quennell',
      'Hums after twenty minutes',
      '1 × | footswitch, two buttons',
      '2 × | spare output tubes',
      'Spending limit: $250.00',
      'Promised: Thu, Oct 22, 2026',
      'Deposit paid: $60.00',
      'Old parts back: yes',
      'The bench fee is credited',
      'V2: 12AX7, customer’s label “quiet one”',
      'V3: 6L6GC, no mark',
      'jobs/1047-0',
      'terms accepted: ________',
    ]
    expect(missing(receiptPaper(sampleReceipt('US')), [...SHOP, ...OWNER, ...AMP, ...facts])).toEqual([])
  })
  test('nobody signs for terms that are not printed', () => {
    const text = paperText(receiptPaper({ ...sampleReceipt('US'), terms: ' ' }))
    expect(text).toContain('Customer: left as listed: ________')
    expect(text).not.toMatch(/terms/i)
  })
  test('what is not known says so and is never zero', () => {
    const bare = {
      ...sampleReceipt('US'),
      spendingLimit: null,
      promisedOn: null,
      depositPaid: null,
      itemsLeft: [],
      tubesReceived: [],
      oldPartsBack: false,
    }
    const amp = { ...bare.amp, serial: ' ', mainsVoltage: null, protectionClass: null }
    const paper = receiptPaper({ ...bare, amp })
    expect(
      missing(paper, [
        'Spending limit: none agreed',
        'Promised: no date promised',
        'Deposit paid: none',
        'Nothing else was left',
        'Serial: not recorded',
        'Line voltage: not recorded',
        'Protection: not recorded',
        'Old parts back: no',
      ]),
    ).toEqual([])
    expect(paperText(paper)).not.toContain('$0.00')
    expect(paperText(paper)).not.toMatch(/tubes as received/i)
  })
})

describe('quote', () => {
  // Worked by hand: 118.75 + 45 + 12 + 7.70 + 6 + 84 = 273.45; 5.5 % of it is 15.03975, so 15.04; 30 % of 288.49 is 86.547, up to 86.55.
  test('lines of $273.45 at 5.5 % make $288.49 with a deposit of $86.55', () => {
    expect(
      missing(quotePaper(sampleQuote('US')), [
        'Subtotal: $273.45',
        'Sales tax 5.5 %: $15.04',
        'Total: $288.49',
        'Deposit due before work starts: $86.55',
      ]),
    ).toEqual([])
  })
  test('carries number, revision, validity, findings, tubes with tests, and what was declined', () => {
    const facts = [
      'Q-1047-0 rev. 1',
      'Valid until: Thu, Oct 22, 2026',
      'Grid voltage on V3 falls from −38.2 V',
      'Labor:',
      'Find and cure hum in the bias supply | 1.25 | h | $95.00 | $118.75',
      '6L6GC, mark LS-0412 for V3 | 1 | pc | $42.00 | $42.00',
      'tested Sep 17, 2026 on tube tester no. 2 at 400 V plate, 400 V screen, −36 V grid: 36.4 mA, 5.32 mA/V',
      'Three-core line cord with strain relief | $48.00',
      'New reverb tank | $56.00',
      'Work and parts 90 days',
      'say yes or no',
      'Accepted by the customer: ________',
    ]
    expect(missing(quotePaper(sampleQuote('US')), [...SHOP, ...OWNER, ...AMP, ...facts])).toEqual([])
  })
  test('a match states marks, date, test point, spread and tolerance', () => {
    expect(
      missing(quotePaper(sampleQuote('US')), [
        'Matched 6L6GC, LS-0412 with LS-0419: tested Sep 17, 2026 on tube tester no. 2 at 400 V plate, 400 V screen, −36 V grid; plate current within 0.80 mA (tolerance 5 mA), transconductance within 3 % (tolerance 10 %).',
      ]),
    ).toEqual([])
  })
  test('tubes tested on two days are told by both: nothing was compared on the later one alone', () => {
    const sample = sampleQuote('UK')
    const matches = sample.matches.map((match) => ({ ...match, testedFrom: '2026-03-02' }))
    expect(missing(quotePaper({ ...sample, matches }), ['tested from 2 Mar 2026 to 17 Sept 2026 on'])).toEqual([])
  })
  test('a fee is not called labour, and a credit stands below nothing with a real minus', () => {
    const sample = sampleQuote('UK')
    const price = { unitPrice: money(-4000), amount: money(-4000), thousandths: 1000, unit: 'flat' }
    const fees = [{ text: 'Bench fee already paid', detail: '', used: false, ...price }]
    const lines = paperText(quotePaper({ ...sample, fees })).split('\n')
    const at = lines.findIndex((each) => each.startsWith('Bench fee already paid'))
    expect(lines[at]).toBe('Bench fee already paid | 1 | flat | −£40.00 | −£40.00')
    expect(lines[at - 1]).toBe('Fees and credits:')
  })
  test('a note to the customer is no finding', () => {
    const text = paperText(quotePaper({ ...sampleQuote('US'), findings: [], note: ['Your old tubes go back.'] }))
    expect(text).toMatch(/No findings recorded\.\n+NOTE\n+Your old tubes go back\.\n/)
  })
  test('a shop without tax shows no row for it, on paper or in the mail', () => {
    const sample = sampleQuote('UK')
    const untaxed = { ...sample, tax: { ...sample.tax, milliPercent: 0, amount: money(0) }, total: sample.subtotal }
    expect(paperText(quotePaper(untaxed))).not.toMatch(/VAT|Subtotal/)
    expect(quoteMail(untaxed).text).toMatch(/^Total: £/m)
    expect(quoteMail(untaxed).text).not.toMatch(/VAT/)
  })
  test('a used part is stated as used, a new one is not', () => {
    const lines = paperText(quotePaper(sampleQuote('US'))).split('\n')
    expect(lines[lines.findIndex((line) => line.startsWith('Octal socket')) + 1]).toMatch(/^ {2}Used part\./)
    expect(lines[lines.findIndex((line) => line.startsWith('Bias filter')) + 1]).not.toMatch(/used/i)
  })
  test('a used tube is stated as used and an untested one as without record', () => {
    const sample = sampleQuote('US')
    const tubes = sample.tubes.map((tube) => ({ ...tube, used: true, condition: 'pull', test: null }))
    expect(missing(quotePaper({ ...sample, tubes }), ['Pull; used tube; no test record.'])).toEqual([])
  })
  test('says that it binds the shop until the end of the last day', () => {
    expect(
      missing(quotePaper(sampleQuote('US')), [
        'This is a quote, not an estimate. It binds the shop to this total until the end of Thu, Oct 22, 2026',
      ]),
    ).toEqual([])
  })
  test('a twin triode shows both sections', () => {
    const sample = sampleQuote('US')
    const tubes = sample.tubes.map((tube) => ({
      ...tube,
      test: tube.test && { ...tube.test, sections: [...tube.test.sections, ...tube.test.sections] },
    }))
    expect(missing(quotePaper({ ...sample, tubes }), ['section 1: 36.4 mA, 5.32 mA/V; section 2: 36.4 mA'])).toEqual([])
  })
})

describe('work order', () => {
  test('carries sockets, tubes to fit, operations, parts, targets and blank safety lines', () => {
    const facts = [
      'Promised: Thu, Oct 22, 2026',
      'Consent: $288.49: Imre Thistlewood, Oct 12, 2026, 5:20 PM, by phone, 207-555-0177; taken by Dara Quennell',
      'V3 | output | 6L6GC | grid-supplied | 6L6GC, no mark | 6L6GC, mark LS-0412',
      'V5 | rectifier | 5AR4 | 5AR4, no mark | stays',
      '[x] Replace both bias filter capacitors',
      '[ ] Replace the socket of V4',
      '2 × | Bias filter capacitor',
      'Octal socket, ceramic (used part)',
      'V3 | 6L6GC | 30 W | 50 % to 70 % | 425 V | 35.3 mA to 49.4 mA',
      'Insulation at 500 V | ≥ 1.0 MΩ | open',
      'V4: 6L6GC, fit LS-0419',
    ]
    expect(missing(workOrderPaper(sampleWorkOrder('US')), [...SHOP, ...AMP, ...facts])).toEqual([])
  })
  test('without any place on the chassis there is no drawing, and the table stands', () => {
    const sample = sampleWorkOrder('US')
    const paper = workOrderPaper({ ...sample, sockets: sample.sockets.map((socket) => ({ ...socket, place: null })) })
    expect(paper.blocks.some(({ type }) => type === 'chassis')).toBe(false)
    expect(missing(paper, ['V3 | output'])).toEqual([])
  })
  test('a target with no reading yet gives no current', () => {
    const sample = sampleWorkOrder('US')
    const idleTargets = sample.idleTargets.map((target) => ({
      ...target,
      plateVoltage: null,
      lowestCurrent: null,
      highestCurrent: null,
    }))
    expect(missing(workOrderPaper({ ...sample, idleTargets }), ['not read yet | after a reading'])).toEqual([])
  })
})

describe('pickup sheet', () => {
  // Power by hand: 425 V × 38.9 mA = 16.53 W; of 30 W that is 55.1 %.
  test('shows a socket before and after, with bands and verdict', () => {
    expect(
      missing(pickupPaper(samplePickup('US')), [
        'V3 6L6GC | before | 418 V | 48.2 ± 1.5 mA | 20.1 ± 0.7 W | 67.2 ± 2.4 % | uncertain: the band crosses 70 %',
        'V3 6L6GC | after | 425 V | 38.9 ± 1.2 mA | 16.5 ± 0.6 W | 55.1 ± 1.9 % | within',
      ]),
    ).toEqual([])
  })
  test('each set of readings states time, person, method, instrument, wall voltage, warm-up and signal', () => {
    expect(
      missing(pickupPaper(samplePickup('US')), [
        'Before: read: Oct 9, 2026, 10:10 AM, Olwen Pascarel',
        'After: read: Oct 20, 2026, 1:45 PM',
        'Method: 1 Ω in each cathode',
        'Line, warm-up: 121.4 V, 15 min, no signal',
        'Instrument: bench meter 1',
      ]),
    ).toEqual([])
  })
  test('carries tubes, work, items, old parts, safety lines, warranty, re-check, payment and identity', () => {
    const facts = [
      'V3 | 6L6GC | LS-0412 | fitted new',
      'V1 | 12AX7 | no mark | as received',
      'Matched 6L6GC, LS-0412 with LS-0419',
      'Socket of V4 replaced by a used one',
      'New reverb tank.',
      '1 × | canvas cover',
      'supply | two bias filter capacitors',
      'Insulation at 500 V | ≥ 1.0 MΩ | 48 MΩ | safety tester, cal. May 11, 2026 | Olwen Pascarel | Oct 20, 2026, 9:10 AM | pass',
      'not tested, because the dummy load is out for repair',
      'Warranty until: Jan 19, 2027',
      'Re-check on: Wed, Nov 18, 2026',
      'Deposit, card | Oct 12, 2026 | $86.55',
      'Total: $288.49',
      'Paid: $288.49',
      'Balance: $0.00',
      'Collected by Maud Thistlewood for Imre Thistlewood. Identity shown: driving license',
    ]
    expect(missing(pickupPaper(samplePickup('US')), [...SHOP, ...OWNER, ...AMP, ...facts])).toEqual([])
  })
  test('a failed line is printed as FAIL', () => {
    const sample = samplePickup('US')
    const signOff = sample.signOff.map((line) => ({ ...line, outcome: 'failed' as const }))
    expect(
      missing(pickupPaper({ ...sample, signOff }), [
        '48 MΩ | safety tester, cal. May 11, 2026 | Olwen Pascarel | Oct 20, 2026, 9:10 AM | FAIL',
      ]),
    ).toEqual([])
  })
  test('an estimate is marked and explained, a measurement is not', () => {
    const sample = samplePickup('US')
    const after = sample.readingsAfter
    const readingsAfter = after && {
      ...after,
      sockets: after.sockets.map((socket) => ({ ...socket, estimated: true })),
    }
    const text = paperText(pickupPaper({ ...sample, readingsAfter }))
    expect(text).toContain('after | 425 V | est. 38.9 ± 1.2 mA | est. 16.5 ± 0.6 W')
    expect(text).toContain('An estimate, not a measurement.')
    expect(paperText(pickupPaper(sample))).not.toContain('est.')
  })
  test('a socket read only before is not lost', () => {
    const sample = samplePickup('US')
    const after = sample.readingsAfter
    const readingsAfter = after && { ...after, sockets: after.sockets.slice(0, 1) }
    expect(missing(pickupPaper({ ...sample, readingsAfter }), ['V4 6L6GC | before'])).toEqual([])
  })
  test('an amplifier returned unrepaired opens with the box that says so, and no safety test is claimed', () => {
    const paper = pickupPaper(sampleUnrepaired('US'))
    const [box] = paper.blocks
    expect(box).toMatchObject({ type: 'cautions', level: 'danger' })
    expect(
      missing(paper, [
        'was not repaired and was not safety-tested',
        'must not be connected to the line supply',
        'Reason: The customer declined quote Q-1047-0 rev. 1.',
        'Outcome: returned unrepaired',
        'Warranty until: no warranty',
      ]),
    ).toEqual([])
    expect(paperText(paper)).not.toContain('SAFETY SIGN-OFF')
  })
  test('money owed to the customer is a negative balance, not a hidden one', () => {
    expect(missing(pickupPaper({ ...samplePickup('US'), balance: money(-500) }), ['Balance: −$5.00'])).toEqual([])
  })
})

describe('cautions and words', () => {
  const papers = {
    receipt: (w: 'US' | 'UK') => receiptPaper(sampleReceipt(w)),
    work: (w: 'US' | 'UK') => workOrderPaper(sampleWorkOrder(w)),
    pickup: (w: 'US' | 'UK') => pickupPaper(samplePickup(w)),
    unrepaired: (w: 'US' | 'UK') => pickupPaper(sampleUnrepaired(w)),
  }
  test.each(Object.entries(papers))('%s names the five dangers in both word sets', (_name, paper) => {
    for (const words of ['US', 'UK'] as const) {
      const text = paperText(paper(words)).toLowerCase()
      for (const danger of [
        'lethal voltage remains inside after unplugging',
        'hot glass',
        'correct load',
        'correct fuse',
        'local codes and licensed practice come first',
      ])
        expect(text).toContain(danger)
    }
  })
  test('the boxed words follow the word set and never mix', () => {
    const boxes = (words: 'US' | 'UK'): string =>
      JSON.stringify(
        [papers.work(words), papers.unrepaired(words)].flatMap(({ blocks }) =>
          blocks.filter(({ type }) => type === 'cautions'),
        ),
      )
    expect(boxes('US')).toMatch(/line cord.*safety ground.*line supply/)
    expect(boxes('US')).not.toMatch(/valve|earth|\bmains\b|anode/i)
    expect(boxes('UK')).toMatch(/mains lead.*safety earth.*mains supply/)
    expect(boxes('UK')).not.toMatch(/tubes?\b|ground|\bline\b|plate/i)
  })
  test('titles, labels and language follow the words', () => {
    expect([papers.pickup('US').title, papers.pickup('UK').title]).toEqual(['Pickup sheet', 'Collection sheet'])
    expect([papers.pickup('US').language, papers.pickup('UK').language]).toEqual(['en-US', 'en-GB'])
    expect(
      missing(papers.pickup('UK'), ['Anode to cathode', 'Mains voltage: 230 V', 'Valves by socket'.toUpperCase()]),
    ).toEqual([])
    expect(missing(quotePaper(sampleQuote('UK')), ['Labour:', 'VAT 20 %: £54.69', 'Total: £328.14'])).toEqual([])
  })
})

test('a paper is plain JSON: stored and read back it is the same', () => {
  const all = [
    receiptPaper(sampleReceipt('US')),
    quotePaper(sampleQuote('UK')),
    workOrderPaper(sampleWorkOrder('US')),
    pickupPaper(samplePickup('UK')),
  ]
  for (const paper of all) expect(JSON.parse(JSON.stringify(paper))).toEqual(paper)
})
