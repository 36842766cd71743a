/** Ready to go, or on the last tests. */
import { droverState, foremanState, millstoneState, tube, type240State } from '@/seed/bench/states'
import { read, writeSheet } from '@/seed/jobs/bench'
import { chooseSet } from '@/seed/jobs/choice'
import { item, takeIn } from '@/seed/jobs/counter'
import { acceptQuote, fee, hours, part, send, writeQuote } from '@/seed/jobs/quoting'
import { failSafety, signSafety } from '@/seed/jobs/safety'
import { on, type Story } from '@/seed/jobs/story'
import { workedOff } from '@/seed/jobs/usual-course'
import { USUAL_FIGURES } from '@/seed/jobs/usual-figures'
import { finishWork, fitTubes, printWorkOrder, tickOff } from '@/seed/jobs/working'

const readyQuad: Story = {
  amp: 'millstoneCormac',
  scenes: [
    on(
      14,
      '10:30',
      'milo',
      takeIn({
        fault: 'Last tubes were put in by the previous owner. Wants a good used set if there is one.',
        limit: 600,
        promised: 1,
        oldParts: true,
        items: [item(1, 'footswitch'), item(1, 'road case, gray')],
      }),
    ),
    on(13, '10:20', 'tess', writeSheet),
    on(
      13,
      '11:00',
      'tess',
      read({
        phase: 'before',
        wall: 120.7,
        state: millstoneState(474, [tube(33.1, -43.6), tube(36.4, -43.6), tube(31.6, -43.6), tube(34.8, -43.6)]),
      }),
    ),
    on(13, '12:00', 'tess', chooseSet('output', { type: 'EL34', condition: 'used-tested' })),
    on(
      13,
      '12:15',
      'tess',
      writeQuote({
        findings: 'The set is worn and idles below its window. A used set of four from one amplifier is in stock.',
        labour: [hours('Fit and match output set, set idle current', 0.75), hours('Clean controls and sockets', 0.5)],
        fees: [fee('Match a pair or quad from stock', 20)],
      }),
    ),
    on(13, '12:25', 'tess', send('mail')),
    on(
      10,
      '11:30',
      'milo',
      acceptQuote({ by: 'Cormac Trelawner', way: 'by phone', detail: '555-0164' }, 'on-bench', 'card'),
    ),
    ...workedOff(7, 'tess', {
      signedDaysAgo: 3,
      round: {
        wall: 120.5,
        state: millstoneState(471, [tube(39.9, -42), tube(40.2, -42), tube(39.3, -42), tube(38.9, -42)]),
      },
      figures: {
        ...USUAL_FIGURES.millstone100,
        soakReading: 'V4 40.2, V5 40.6, V6 39.4, V7 39.1 mV',
        heard: 'both channels, loop',
        screens: [1.002, 1, 0.999, 1],
      },
    }),
  ],
}

const readyUnpaid: Story = {
  amp: 'foremanTannery2',
  scenes: [
    on(
      13,
      '10:40',
      'milo',
      takeIn({ fault: 'Hums, and the lights dim when it is switched on.', limit: 500, promised: 3, items: [] }),
    ),
    on(12, '10:20', 'anselm', writeSheet),
    on(
      12,
      '11:20',
      'anselm',
      read({
        phase: 'before',
        wall: 119.4,
        note: 'Hum 9 mV at the output with volumes down.',
        state: foremanState(434, [tube(52.9, -42.1), tube(50.1, -42.1)]),
      }),
    ),
    on(12, '12:00', 'anselm', chooseSet('output', { type: '6L6GC', condition: 'current-production' })),
    on(
      12,
      '12:15',
      'anselm',
      writeQuote({
        findings:
          'The reservoir capacitor has lost most of its capacity; the output pair is worn and cannot be set within its window.',
        labour: [
          hours('Bench diagnosis', 1),
          hours('Replace filter capacitors', 2),
          hours('Fit and match output set, set idle current', 0.75),
        ],
        parts: [
          part('Capacitor 47 µF, 500 V', 2, 9.4, 'Filter capacitor, 47 µF 500 V'),
          part('Capacitor 22 µF, 500 V', 2, 6.8),
        ],
        fees: [fee('Match a pair or quad from stock', 20)],
      }),
    ),
    on(12, '12:20', 'anselm', send('mail')),
    on(
      11,
      '10:30',
      'milo',
      acceptQuote(
        { by: 'Ingrid Solbakken', way: 'by e-mail', detail: 'backline@example.com' },
        'waiting-for-parts',
        null,
      ),
    ),
    ...workedOff(7, 'anselm', {
      signedDaysAgo: 5,
      round: { wall: 119.9, note: 'Hum 0.8 mV.', state: foremanState(442, [tube(46.8, -46), tube(46.1, -46)]) },
      figures: {
        ...USUAL_FIGURES.foreman40,
        insulationMegohms: 88,
        soakReading: 'V5 3.35 V, V6 3.62 V over the half primaries',
        heard: 'no hum to be heard at the speaker',
        screens: [1, 1.001],
      },
    }),
  ],
}

/** Dead and tester lines signed; soak and listening still to come. */
const onSoak: Story = {
  amp: 'type240Ludmila',
  scenes: [
    on(
      11,
      '14:10',
      'milo',
      takeIn({
        fault: 'Left channel distorts when it gets loud, right is fine.',
        limit: 450,
        promised: 2,
        items: [item(1, 'top cover with four screws')],
      }),
    ),
    on(10, '10:40', 'tess', writeSheet),
    on(
      10,
      '11:30',
      'tess',
      read({
        phase: 'before',
        wall: 120.9,
        warmup: 30,
        state: type240State(485, [tube(61.2, -61.6), tube(43.8, -61.6), tube(60.8, -60.5), tube(59.9, -60.5)]),
      }),
    ),
    on(10, '12:10', 'tess', chooseSet('left', { type: 'KT88', condition: 'current-production' })),
    on(
      10,
      '12:25',
      'tess',
      writeQuote({
        findings: 'V5 has lost emission and falls behind its partner at every setting. The right pair is within 1 mA.',
        labour: [hours('Bench diagnosis', 1), hours('Fit and match output set, set idle current', 0.75)],
        fees: [fee('Match a pair or quad from stock', 20)],
      }),
    ),
    on(10, '12:35', 'tess', send('mail')),
    on(
      8,
      '10:30',
      'milo',
      acceptQuote(
        { by: 'Ludmila Hraskova', way: 'by e-mail', detail: 'l.hraskova@example.net' },
        'on-bench',
        'bank transfer',
      ),
    ),
    on(3, '10:20', 'tess', printWorkOrder),
    on(3, '10:40', 'tess', fitTubes),
    on(3, '11:10', 'tess', tickOff()),
    on(
      3,
      '12:10',
      'tess',
      read({
        phase: 'after',
        wall: 120.6,
        warmup: 30,
        state: type240State(484, [tube(60.6, -60.4), tube(60.3, -60.1), tube(60.4, -60.4), tube(60.1, -60.4)]),
      }),
    ),
    on(3, '12:20', 'tess', finishWork),
    on(
      1,
      '11:00',
      'tess',
      signSafety({ ...USUAL_FIGURES.type240, soakReading: '', heard: '', screens: [1, 1.005, 1, 0.995] }, [
        'discharge',
        'fuse',
        'cord',
        'earth-bond',
        'insulation',
        'leakage',
        'screen-resistors',
        'idle',
        'full-power',
      ]),
    ),
  ],
}

/** The ground bond failed: promised for today, and not released. */
const failedBond: Story = {
  amp: 'droverAino',
  scenes: [
    on(
      11,
      '10:20',
      'milo',
      takeIn({
        fault: 'Shock from the strings when I touch the microphone. And one side of the tubes is dark.',
        limit: 400,
        promised: 0,
        items: [item(1, 'microphone cable')],
      }),
    ),
    on(10, '14:10', 'anselm', writeSheet),
    on(
      10,
      '14:50',
      'anselm',
      read({
        phase: 'before',
        wall: 119.1,
        note: 'On an isolation transformer. Heater of V5 open.',
        state: droverState(338, [tube(52.8), tube(0.2)]),
      }),
    ),
    on(10, '15:20', 'anselm', chooseSet('output', { type: '6V6GT', condition: 'current-production' })),
    on(
      10,
      '15:30',
      'anselm',
      writeQuote({
        findings:
          'V5 has an open heater. The cord’s ground conductor is broken inside the plug: the amplifier must not be used before that is mended.',
        labour: [
          hours('Bench diagnosis', 1),
          hours('Three-wire cord and ground bond', 1),
          hours('Fit and match output set, set idle current', 0.75),
        ],
        parts: [part('Cord 18 AWG, three-core, 8 ft', 1, 11.5)],
        fees: [fee('Match a pair or quad from stock', 20)],
      }),
    ),
    on(10, '15:35', 'anselm', send('mail')),
    on(
      8,
      '14:20',
      'milo',
      acceptQuote({ by: 'Aino Kettuvaara', way: 'by e-mail', detail: 'aino.k@example.org' }, 'on-bench', 'card'),
    ),
    on(4, '10:20', 'anselm', printWorkOrder),
    on(4, '11:30', 'anselm', tickOff()),
    on(4, '11:45', 'anselm', fitTubes),
    on(
      4,
      '12:30',
      'anselm',
      read({
        phase: 'after',
        wall: 119.8,
        state: droverState(331, [tube(38.1), tube(37.7)]),
      }),
    ),
    on(4, '12:35', 'anselm', finishWork),
    on(
      2,
      '11:10',
      'anselm',
      signSafety({ ...USUAL_FIGURES.drover15, soakReading: '', heard: '', cord: 'renewed, strain relief tight' }, [
        'discharge',
        'fuse',
        'cord',
        'insulation',
      ]),
    ),
    on(
      2,
      '11:40',
      'anselm',
      failSafety('earth-bond', 0.62, 'bond', 'Old rivet under the new lug: to be drilled out and bolted.'),
    ),
  ],
}

export const NEARLY_DONE: readonly Story[] = [readyQuad, readyUnpaid, onSoak, failedBond]
