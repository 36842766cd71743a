/** The first jobs that are home again, with all their papers: three telling faults. */
import { foremanState, millstoneState, pipitState, tube, withDeadSocket } from '@/seed/bench/states'
import { read, writeSheet } from '@/seed/jobs/bench'
import { chooseOne, chooseSet } from '@/seed/jobs/choice'
import { item, takeIn } from '@/seed/jobs/counter'
import { collect } from '@/seed/jobs/pickup'
import { acceptQuote, fee, hours, part, send, writeQuote } from '@/seed/jobs/quoting'
import { on, type Story } from '@/seed/jobs/story'
import { workedOff } from '@/seed/jobs/usual-course'
import { USUAL_FIGURES } from '@/seed/jobs/usual-figures'

/** Comes in 12 % above the window, goes home in the middle of it. */
const redPlate: Story = {
  amp: 'foremanTomasz',
  scenes: [
    on(
      58,
      '10:20',
      'milo',
      takeIn({
        fault: 'Runs hotter than it used to. After an hour one of the big tubes gets a red patch.',
        settings: 'Any volume, after an hour; worse on Saturday at the hall.',
        limit: 350,
        promised: -58,
        items: [item(1, 'footswitch, two buttons'), item(1, 'cover')],
      }),
    ),
    on(57, '11:00', 'tess', writeSheet),
    on(
      57,
      '11:40',
      'tess',
      read({
        phase: 'before',
        wall: 119.6,
        warmup: 20,
        note: 'Bias trim at its stop. Red spot on V5 after 18 minutes.',
        state: foremanState(429, [tube(58.9, -40.3), tube(57.4, -40.3)], {
          V4: { plateVolts: 232, cathodeVolts: 88.4 },
        }),
      }),
    ),
    on(57, '14:10', 'tess', chooseSet('output', { type: '6L6GC', condition: 'current-production' })),
    on(
      57,
      '14:30',
      'tess',
      writeQuote({
        findings:
          'Both output tubes idle above their limit and the bias trim is at its stop: the bias supply capacitor has dried out.\nThe tubes have run red and are worn.',
        labour: [
          hours('Bench diagnosis', 1),
          hours('Fit and match output set, set idle current', 0.75),
          hours('Replace bias supply capacitor', 0.5),
        ],
        parts: [part('Capacitor 100 µF, 100 V', 1, 2.8)],
        fees: [fee('Match a pair or quad from stock', 20)],
      }),
    ),
    on(57, '14:50', 'tess', send('mail')),
    on(
      56,
      '10:05',
      'milo',
      acceptQuote({ by: 'Tomasz Wielgorski', way: 'by phone', detail: '555-0123' }, 'on-bench', 'card'),
    ),
    ...workedOff(54, 'tess', {
      signedDaysAgo: 53,
      round: {
        wall: 119.9,
        warmup: 20,
        state: foremanState(441, [tube(47.2, -46.1), tube(46.4, -46.1)], {
          V4: { plateVolts: 238, cathodeVolts: 90.6 },
        }),
      },
      figures: {
        ...USUAL_FIGURES.foreman40,
        soakReading: 'V5 3.31 V, V6 3.58 V over the half primaries',
        heard: 'guitar, all inputs, reverb and footswitch; quiet',
        screens: [1, 1.01],
      },
    }),
    on(50, '15:30', 'milo', collect({ name: 'Tomasz Wielgorski' }, 'card')),
  ],
}

/** A leaky coupling capacitor holds the grid above zero. */
const leakyCapacitor: Story = {
  amp: 'pipitOdalys',
  scenes: [
    on(
      55,
      '11:05',
      'milo',
      takeIn({
        fault: 'Fine when cold. After half an hour it hums and breaks up, then gets quiet.',
        settings: 'Volume at 5, any guitar.',
        limit: 250,
        promised: -54,
        oldParts: true,
        items: [item(1, 'power cord, loose')],
      }),
    ),
    on(54, '10:10', 'anselm', writeSheet),
    on(
      54,
      '11:20',
      'anselm',
      read({
        phase: 'before',
        wall: 119.4,
        warmup: 40,
        note: 'Grid of V2 at 0.2 V when cold, climbing.',
        state: pipitState(311, tube(54.2, 1.7)),
      }),
    ),
    on(54, '12:00', 'anselm', chooseOne('V2', { type: '6V6GT', condition: 'current-production' })),
    on(
      54,
      '12:20',
      'anselm',
      writeQuote({
        findings:
          'The coupling capacitor to V2 leaks: its grid stands 1.7 V positive when warm, and the tube runs above its rating.\nThe tube has suffered and is gassy.',
        labour: [
          hours('Bench diagnosis', 1),
          hours('Replace coupling capacitor', 0.5),
          hours('Clean controls and sockets', 0.5),
        ],
        parts: [part('Film capacitor 22 nF, 630 V', 1, 2.4)],
      }),
    ),
    on(54, '12:30', 'anselm', send('mail')),
    on(
      53,
      '11:15',
      'milo',
      acceptQuote({ by: 'Odalys Prewitt', way: 'by phone', detail: '555-0117' }, 'on-bench', null),
    ),
    ...workedOff(52, 'anselm', {
      signedDaysAgo: 52,
      round: { wall: 119.8, warmup: 40, state: pipitState(325, tube(41.6)) },
      figures: {
        ...USUAL_FIGURES.pipit5,
        soakReading: 'V2 cathode 19.4 V, grid 0.0 V',
        heard: 'guitar for ten minutes; the fault is gone',
      },
    }),
    on(50, '12:10', 'milo', collect({ name: 'Odalys Prewitt' }, 'cash')),
  ],
}

/** An open screen resistor: one socket of four is dead, the others are uneven. */
const deadSocket: Story = {
  amp: 'millstoneRui',
  scenes: [
    on(
      53,
      '10:40',
      'milo',
      takeIn({
        fault: 'Half as loud as it was. There was a burnt smell from the back once.',
        settings: 'Both channels.',
        limit: 500,
        promised: -49,
        items: [item(1, 'footswitch'), item(2, 'spare tubes in a sock')],
      }),
    ),
    on(52, '12:30', 'tess', writeSheet),
    on(
      52,
      '13:20',
      'tess',
      read({
        phase: 'before',
        wall: 120.4,
        note: 'V6 draws nothing: its screen resistor is open.',
        state: withDeadSocket(
          millstoneState(477, [tube(37.4, -41.6), tube(43.1, -41.6), tube(0, -41.6), tube(31.2, -41.6)]),
          'V6',
        ),
      }),
    ),
    on(52, '14:50', 'tess', chooseSet('output', { type: 'EL34', condition: 'current-production' })),
    on(
      52,
      '15:10',
      'tess',
      writeQuote({
        findings:
          'Socket V6 is dead: the screen resistor has burnt open after a short in its tube.\nThe other three have worn apart and cannot be matched to one new tube.',
        labour: [
          hours('Bench diagnosis', 1),
          hours('Replace screen resistor', 0.5),
          hours('Fit and match output set, set idle current', 0.75),
        ],
        parts: [part('Resistor 1 kΩ, 5 W, wire-wound', 1, 1.9)],
        fees: [fee('Match a pair or quad from stock', 20)],
      }),
    ),
    on(52, '15:20', 'tess', send('mail')),
    on(
      51,
      '10:15',
      'milo',
      acceptQuote(
        { by: 'Rui Satoyama', way: 'by e-mail', detail: 'rui.satoyama@example.com' },
        'on-bench',
        'bank transfer',
      ),
    ),
    ...workedOff(49, 'tess', {
      signedDaysAgo: 49,
      round: {
        wall: 120.2,
        state: millstoneState(470, [tube(39.8, -42), tube(40.6, -42), tube(39.1, -42), tube(39.9, -42)]),
      },
      figures: {
        ...USUAL_FIGURES.millstone100,
        soakReading: 'V4 40.1, V5 40.9, V6 39.3, V7 40.2 mV',
        heard: 'both channels at stage level into a dummy load and a small speaker',
        screens: [1, 1, 0.998, 1.001],
      },
    }),
    on(46, '11:40', 'milo', collect({ name: 'Rui Satoyama' }, 'card')),
  ],
}

export const COLLECTED_FIRST: readonly Story[] = [redPlate, leakyCapacitor, deadSocket]
