/** Jobs that are long home, with all their papers. */
import { droverState, tansyState, tube, type240State } from '@/seed/bench/states'
import { read, writeSheet } from '@/seed/jobs/bench'
import { chooseOne, chooseSet } from '@/seed/jobs/choice'
import { item, takeIn } from '@/seed/jobs/counter'
import { collect } from '@/seed/jobs/pickup'
import { acceptQuote, fee, hours, part, send, writeQuote } from '@/seed/jobs/quoting'
import { on, type Story } from '@/seed/jobs/story'
import { workedOff } from '@/seed/jobs/usual-course'
import { USUAL_FIGURES } from '@/seed/jobs/usual-figures'

/** Worn pair and a tired rectifier: colder than it should be. */
const tiredPair: Story = {
  amp: 'droverOdalys',
  scenes: [
    on(
      48,
      '12:15',
      'milo',
      takeIn({
        fault: 'Dull and soft, no attack any more. Never had new tubes since I got it.',
        limit: 350,
        promised: -42,
        oldParts: true,
        items: [item(1, 'footswitch for the tremolo')],
      }),
    ),
    on(47, '10:20', 'anselm', writeSheet),
    on(
      47,
      '11:05',
      'anselm',
      read({
        phase: 'before',
        wall: 119.2,
        state: droverState(312, [tube(30.8), tube(28.4)]),
      }),
    ),
    on(47, '12:00', 'anselm', chooseSet('output', { type: '6V6GT', condition: 'current-production' })),
    on(47, '12:05', 'anselm', chooseOne('V6', { type: '5Y3GT', condition: 'new-old-stock-loose' })),
    on(
      47,
      '12:20',
      'anselm',
      writeQuote({
        findings: 'Output tubes are weak and idle below their window; the rectifier drops 20 V more than it should.',
        labour: [
          hours('Bench diagnosis', 1),
          hours('Fit and match output set, set idle current', 0.75),
          hours('Clean controls and sockets', 0.5),
        ],
        fees: [fee('Match a pair or quad from stock', 20)],
      }),
    ),
    on(47, '12:30', 'anselm', send('mail')),
    on(45, '10:50', 'milo', acceptQuote({ by: 'Odalys Prewitt', way: 'in person' }, 'on-bench', 'cash')),
    ...workedOff(44, 'anselm', {
      signedDaysAgo: 44,
      round: { wall: 119.7, state: droverState(331, [tube(38.3), tube(37.5)]) },
      figures: {
        ...USUAL_FIGURES.drover15,
        soakReading: 'common cathode 19.2 V',
        heard: 'guitar, both inputs, tremolo at all speeds',
      },
    }),
    on(42, '14:20', 'milo', collect({ name: 'Odalys Prewitt' }, 'card')),
  ],
}

/** Hi-fi, all tubes sound: one trim had wandered. No tubes sold. */
const wanderedTrim: Story = {
  amp: 'type240Hollis',
  scenes: [
    on(
      46,
      '14:05',
      'milo',
      takeIn({
        fault: 'Yearly check. My own meter says the left front tube runs hotter than the rest.',
        limit: 250,
        promised: -40,
        items: [item(1, 'owner’s notebook with readings')],
      }),
    ),
    on(45, '11:10', 'tess', writeSheet),
    on(
      45,
      '12:00',
      'tess',
      read({
        phase: 'before',
        wall: 121.1,
        warmup: 30,
        state: type240State(481, [tube(71.6, -57.4), tube(60.3, -59.6), tube(61.5, -59.8), tube(60.1, -59.9)]),
      }),
    ),
    on(
      45,
      '14:20',
      'tess',
      writeQuote({
        findings:
          'V4 idles 9 % above our limit: its trim has a worn track. The other three are within.\nAll four tubes test well and can stay.',
        labour: [hours('Bench diagnosis', 1), hours('Replace bias trim, set idle current of four', 1)],
        parts: [part('Trim 25 kΩ, sealed', 1, 4.6)],
      }),
    ),
    on(45, '14:30', 'tess', send('mail')),
    on(
      44,
      '13:10',
      'milo',
      acceptQuote({ by: 'Hollis Granthorpe', way: 'by phone', detail: '555-0142' }, 'on-bench', null),
    ),
    ...workedOff(43, 'tess', {
      signedDaysAgo: 43,
      round: {
        wall: 120.8,
        warmup: 30,
        state: type240State(484, [tube(60.4, -60.3), tube(60.2, -60.2), tube(60.9, -60.3), tube(60.5, -60.4)]),
      },
      figures: {
        ...USUAL_FIGURES.type240,
        soakReading: 'V4 604, V5 602, V6 610, V7 606 mV',
        heard: 'records, both channels; silent with no input',
      },
    }),
    on(41, '12:00', 'milo', collect({ name: 'Hollis Granthorpe' }, 'cheque')),
  ],
}

/** A noisy first stage. */
const noisyPentode: Story = {
  amp: 'tansyKeziah',
  scenes: [
    on(
      43,
      '10:15',
      'milo',
      takeIn({
        fault: 'Crackles and rumbles when nothing is plugged in, worse when the floor shakes.',
        settings: 'Bright channel only.',
        limit: 250,
        promised: -37,
        items: [],
      }),
    ),
    on(42, '10:20', 'anselm', writeSheet),
    on(
      42,
      '11:00',
      'anselm',
      read({
        phase: 'before',
        wall: 120.1,
        note: 'V1 rings when tapped.',
        state: tansyState(318, [tube(40.4), tube(39.6)], {
          V1: { plateVolts: 96, cathodeVolts: 2.05 },
          V2: { plateVolts: 171, cathodeVolts: 1.36 },
        }),
      }),
    ),
    on(42, '12:10', 'anselm', chooseOne('V1', { type: 'EF86', condition: 'new-old-stock-loose' })),
    on(
      42,
      '12:20',
      'anselm',
      writeQuote({
        findings: 'The first tube is microphonic and noisy. Output pair and supplies are in order.',
        labour: [hours('Bench diagnosis', 1), hours('Clean controls and sockets', 0.5)],
      }),
    ),
    on(42, '12:30', 'anselm', send('mail')),
    on(
      41,
      '14:30',
      'milo',
      acceptQuote({ by: 'Keziah Bellwood', way: 'by phone', detail: '555-0131' }, 'on-bench', null),
    ),
    ...workedOff(40, 'anselm', {
      signedDaysAgo: 40,
      round: {
        wall: 120.3,
        state: tansyState(318, [tube(40.5), tube(39.5)], {
          V1: { plateVolts: 92, cathodeVolts: 2.12 },
          V2: { plateVolts: 170, cathodeVolts: 1.37 },
        }),
      },
      figures: {
        ...USUAL_FIGURES.tansy18,
        soakReading: 'V4 10.9 V, V5 10.6 V at the cathodes',
        heard: 'open input at full gain: hiss only, no rumble',
        screens: [1, 1.004],
      },
    }),
    on(37, '10:50', 'milo', collect({ name: 'Keziah Bellwood' }, 'card')),
  ],
}

export const COLLECTED_EARLIER: readonly Story[] = [tiredPair, wanderedTrim, noisyPentode]
