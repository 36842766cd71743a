/** Collected in the last weeks, and one re-check that cost nothing. */
import { droverState, foremanState, pipitState, tube } from '@/seed/bench/states'
import { move, read, writeSheet } from '@/seed/jobs/bench'
import { chooseOne, chooseSet } from '@/seed/jobs/choice'
import { item, takeIn } from '@/seed/jobs/counter'
import { collect } from '@/seed/jobs/pickup'
import { acceptQuote, fee, hours, part, send, writeQuote } from '@/seed/jobs/quoting'
import { release, signSafety } from '@/seed/jobs/safety'
import { on, type Story } from '@/seed/jobs/story'
import { workedOff } from '@/seed/jobs/usual-course'
import { USUAL_FIGURES } from '@/seed/jobs/usual-figures'
import { finishWork } from '@/seed/jobs/working'

const INGRID = 'Ingrid Solbakken'

/** Reverb and a pair that has drifted apart: good used tubes wanted. */
const houseAmp: Story = {
  amp: 'foremanTannery1',
  scenes: [
    on(
      40,
      '10:10',
      'milo',
      takeIn({
        fault: 'Reverb gone since last week. Also weak on the low strings.',
        limit: 400,
        promised: -34,
        items: [item(1, 'footswitch')],
      }),
    ),
    on(39, '10:30', 'tess', writeSheet),
    on(
      39,
      '11:10',
      'tess',
      read({
        phase: 'before',
        wall: 119,
        meter: 'meterB',
        state: foremanState(446, [tube(39.6, -45.9), tube(31.8, -45.9)]),
      }),
    ),
    on(39, '12:10', 'tess', chooseSet('output', { type: '6L6GC', condition: 'used-tested' })),
    on(39, '12:15', 'tess', chooseOne('V3', { type: '12AT7', condition: 'new-old-stock-loose' })),
    on(
      39,
      '12:30',
      'tess',
      writeQuote({
        findings: 'The reverb driver V3 is dead. The output pair has drifted 8 mA apart and idles below its window.',
        note: 'Used tubes as agreed with Ms Solbakken: tested, matched, full warranty of this quote.',
        labour: [hours('Bench diagnosis', 1), hours('Fit and match output set, set idle current', 0.75)],
        fees: [fee('Match a pair or quad from stock', 20)],
      }),
    ),
    on(39, '12:40', 'tess', send('mail')),
    on(
      38,
      '10:20',
      'milo',
      acceptQuote({ by: INGRID, way: 'by e-mail', detail: 'backline@example.com' }, 'on-bench', null),
    ),
    ...workedOff(37, 'tess', {
      signedDaysAgo: 37,
      round: { wall: 119.3, state: foremanState(440, [tube(46.3, -45.2), tube(45.4, -45.2)]) },
      figures: {
        ...USUAL_FIGURES.foreman40,
        leakageMilliamps: 0.57,
        soakReading: 'V5 3.35 V, V6 3.44 V over the half primaries',
        heard: 'reverb full, all inputs',
        screens: [1.002, 0.996],
      },
    }),
    on(35, '10:40', 'milo', collect({ name: INGRID, identity: 'company card' }, 'bank transfer')),
  ],
}

/** An arcing rectifier. */
const arcingRectifier: Story = {
  amp: 'foremanDev',
  scenes: [
    on(
      33,
      '12:40',
      'milo',
      takeIn({
        fault: 'Blue flash at the back when the standby goes over, then the fuse went.',
        limit: 220,
        promised: -27,
        items: [item(1, 'speaker cable')],
      }),
    ),
    on(32, '10:15', 'anselm', writeSheet),
    on(
      32,
      '11:30',
      'anselm',
      read({
        phase: 'before',
        wall: 119.8,
        note: 'With a known good rectifier of the shop.',
        state: foremanState(440, [tube(45.9, -45.7), tube(47.1, -45.7)]),
      }),
    ),
    on(32, '12:10', 'anselm', chooseOne('V7', { type: '5AR4', condition: 'current-production' })),
    on(
      32,
      '12:20',
      'anselm',
      writeQuote({
        findings:
          'The rectifier arcs when hot and took the fuse with it. Reservoir capacitors and output pair are in order.',
        labour: [hours('Bench diagnosis', 1)],
        parts: [part('Fuse T 2.5 A', 2, 0.8)],
      }),
    ),
    on(32, '12:25', 'anselm', send('mail')),
    on(31, '10:10', 'milo', acceptQuote({ by: 'Dev Raghuvan', way: 'by phone', detail: '555-0153' }, 'on-bench', null)),
    ...workedOff(31, 'anselm', {
      signedDaysAgo: 30,
      round: { wall: 120, state: foremanState(441, [tube(46.1, -45.8), tube(47.2, -45.8)]) },
      figures: {
        ...USUAL_FIGURES.foreman40,
        bondOhms: 0.12,
        soakReading: 'V5 3.28 V, V6 3.83 V over the half primaries',
        heard: 'standby on and off ten times',
        screens: [1, 1.003],
      },
    }),
    on(29, '15:40', 'milo', collect({ name: 'Dev Raghuvan' }, 'card')),
  ],
}

/** The tremolo of the hall’s amplifier. */
const stoppedTremolo: Story = {
  amp: 'droverMillrace',
  scenes: [
    on(
      29,
      '10:30',
      'milo',
      takeIn({ fault: 'Tremolo does nothing. Needed for the school concert.', limit: 150, promised: -24, items: [] }),
    ),
    on(28, '10:20', 'anselm', writeSheet),
    on(
      28,
      '10:50',
      'anselm',
      read({
        phase: 'before',
        wall: 119.5,
        state: droverState(329, [tube(37.2), tube(36.6)], { V2: { plateVolts: 251, cathodeVolts: 0.1 } }),
      }),
    ),
    on(28, '11:20', 'anselm', chooseOne('V2', { type: '12AX7', condition: 'used-tested' })),
    on(
      28,
      '11:30',
      'anselm',
      writeQuote({
        findings: 'The tremolo tube V2 has lost one section. Output pair is sound.',
        labour: [hours('Bench diagnosis', 1)],
      }),
    ),
    on(28, '11:40', 'anselm', send('hand-over')),
    on(25, '11:10', 'milo', acceptQuote({ by: 'Dorothea Finchley', way: 'by post' }, 'on-bench', null)),
    ...workedOff(24, 'anselm', {
      signedDaysAgo: 24,
      round: {
        wall: 119.9,
        state: droverState(329, [tube(37.3), tube(36.7)], { V2: { plateVolts: 148, cathodeVolts: 1.9 } }),
      },
      figures: {
        ...USUAL_FIGURES.drover15,
        cord: 'three-core, new plug fitted',
        soakReading: 'common cathode 18.6 V',
        heard: 'tremolo at all speeds and depths',
      },
    }),
    on(21, '10:30', 'milo', collect({ name: 'Dorothea Finchley', identity: 'known to us' }, 'cheque')),
  ],
}

/** Six weeks after the new tube: read again, nothing charged. */
const recheck: Story = {
  amp: 'pipitOdalys',
  scenes: [
    on(
      19,
      '11:10',
      'milo',
      takeIn({ fault: 'Comes for the re-check of the new tube. No complaint.', limit: null, promised: -20, items: [] }),
    ),
    on(19, '13:30', 'anselm', move('on-bench')),
    on(
      19,
      '14:20',
      'anselm',
      read({
        phase: 'after',
        wall: 119.6,
        warmup: 45,
        note: 'Re-check after six weeks: settled 0.4 V lower.',
        state: pipitState(326, tube(40.8)),
      }),
    ),
    on(19, '14:25', 'anselm', finishWork),
    on(
      18,
      '10:15',
      'anselm',
      signSafety({ ...USUAL_FIGURES.pipit5, soakReading: 'V2 cathode 19.1 V', heard: 'quiet, plays as it should' }),
    ),
    on(18, '12:40', 'anselm', release),
    on(17, '15:20', 'milo', collect({ name: 'Odalys Prewitt' }, 'cash')),
  ],
}

/** Old stock, because the customer asked for it. */
const oldStock: Story = {
  amp: 'foremanRui',
  scenes: [
    on(
      24,
      '10:40',
      'milo',
      takeIn({
        fault: 'Wants a better pair of output tubes put in and set, old stock if we have it.',
        limit: 500,
        promised: -16,
        oldParts: true,
        items: [item(1, 'footswitch')],
      }),
    ),
    on(23, '10:20', 'tess', writeSheet),
    on(
      23,
      '11:00',
      'tess',
      read({
        phase: 'before',
        wall: 120.2,
        state: foremanState(444, [tube(42.6, -47.2), tube(40.9, -47.2)]),
      }),
    ),
    on(23, '11:40', 'tess', chooseSet('output', { type: '6L6GC', condition: 'new-old-stock-boxed' })),
    on(
      23,
      '12:00',
      'tess',
      writeQuote({
        findings: 'The pair in it works but is worn. A pair of old stock from one box, tested at 400 V, stands ready.',
        labour: [hours('Fit and match output set, set idle current', 0.75)],
        fees: [fee('Match a pair or quad from stock', 20)],
      }),
    ),
    on(23, '12:10', 'tess', send('mail')),
    on(
      22,
      '10:20',
      'milo',
      acceptQuote({ by: 'Rui Satoyama', way: 'by e-mail', detail: 'rui.satoyama@example.com' }, 'on-bench', 'card'),
    ),
    ...workedOff(20, 'tess', {
      signedDaysAgo: 20,
      round: { wall: 120.1, warmup: 30, state: foremanState(441, [tube(46.6, -45.4), tube(46, -45.4)]) },
      figures: {
        ...USUAL_FIGURES.foreman40,
        soakReading: 'V5 3.37 V, V6 3.57 V over the half primaries',
        heard: 'clean and driven, no rattle',
        screens: [1.004, 1],
      },
    }),
    on(18, '12:10', 'milo', collect({ name: 'Rui Satoyama' }, 'card')),
  ],
}

export const COLLECTED_LATER: readonly Story[] = [houseAmp, arcingRectifier, stoppedTremolo, recheck, oldStock]
