/** Went back as they were, or nobody comes for them. */
import { millstoneState, tansyState, tube } from '@/seed/bench/states'
import { move, read, writeSheet } from '@/seed/jobs/bench'
import { chooseSet } from '@/seed/jobs/choice'
import { item, takeIn } from '@/seed/jobs/counter'
import { goesBackAsItIs } from '@/seed/jobs/pickup'
import { acceptQuote, declineQuote, fee, hours, part, send, writeQuote } from '@/seed/jobs/quoting'
import { on, type Story } from '@/seed/jobs/story'
import { workedOff } from '@/seed/jobs/usual-course'
import { USUAL_FIGURES } from '@/seed/jobs/usual-figures'

/** The output transformer is open, and the price of another is declined. */
const openTransformer: Story = {
  amp: 'pipitYusuf',
  scenes: [
    on(
      36,
      '11:40',
      'milo',
      takeIn({
        fault: 'No sound at all. Lights up.',
        limit: 120,
        promised: -33,
        items: [item(1, 'power cord, loose')],
      }),
    ),
    on(35, '10:20', 'anselm', writeSheet),
    on(35, '10:40', 'anselm', move('on-bench')),
    on(
      35,
      '11:30',
      'anselm',
      writeQuote({
        findings:
          'The primary of the output transformer is open. V2 has no plate voltage and must not be switched on so: its screen takes all the current.',
        labour: [hours('Bench diagnosis', 1), hours('Replace output transformer', 1.5)],
        parts: [part('Output transformer, single-ended 5 kΩ to 4 Ω', 1, 86)],
      }),
    ),
    on(35, '11:40', 'anselm', send('mail')),
    on(33, '14:10', 'milo', declineQuote({ by: 'Yusuf Demirkaya', way: 'by phone', detail: '555-0169' })),
    on(
      32,
      '15:00',
      'milo',
      goesBackAsItIs(
        { name: 'Yusuf Demirkaya' },
        { reason: 'Repair declined: output transformer open. Not to be switched on.', dollars: 75, how: 'cash' },
      ),
    ),
  ],
}

/** Three days on the bench, and the fault never showed. */
const notReproduced: Story = {
  amp: 'tansyYusuf',
  scenes: [
    on(
      28,
      '12:20',
      'milo',
      takeIn({
        fault: 'Cuts out for a second, about once an evening.',
        settings: 'Cannot say which channel.',
        limit: 200,
        promised: -22,
        items: [],
      }),
    ),
    on(27, '10:20', 'tess', writeSheet),
    on(
      27,
      '11:00',
      'tess',
      read({
        phase: 'before',
        wall: 120.6,
        note: 'Soaked 9 h over three days on a dummy load, tapped, warmed and cooled: no fault.',
        state: tansyState(317, [tube(39.8), tube(40.3)]),
      }),
    ),
    on(
      23,
      '15:10',
      'milo',
      goesBackAsItIs(
        { name: 'Yusuf Demirkaya' },
        {
          reason:
            'Fault not reproduced in 9 hours over three days. Readings in order. Please note what was touched when it happens next.',
          dollars: 75,
          how: 'card',
        },
      ),
    ),
  ],
}

/** Ready for weeks; written to twice. */
const notFetched: Story = {
  amp: 'millstoneTannery',
  scenes: [
    on(
      34,
      '10:15',
      'milo',
      takeIn({
        fault: 'Blows its fuse now and then. Room 3, so it is never looked after.',
        limit: 450,
        promised: -28,
        items: [item(1, 'power cord')],
      }),
    ),
    on(33, '10:20', 'tess', writeSheet),
    on(
      33,
      '11:10',
      'tess',
      read({
        phase: 'before',
        wall: 120.3,
        meter: 'meterB',
        note: 'V5 flashes over when tapped.',
        state: millstoneState(466, [tube(41.3, -41.4), tube(52.6, -41.4), tube(36.9, -41.4), tube(38.4, -41.4)]),
      }),
    ),
    on(33, '12:10', 'tess', chooseSet('output', { type: 'EL34', condition: 'current-production' })),
    on(
      33,
      '12:20',
      'tess',
      writeQuote({
        findings: 'V5 flashes over and runs above our limit; the set has drifted apart.',
        labour: [hours('Bench diagnosis', 1), hours('Fit and match output set, set idle current', 0.75)],
        fees: [fee('Match a pair or quad from stock', 20)],
      }),
    ),
    on(33, '12:30', 'tess', send('mail')),
    on(
      31,
      '11:20',
      'milo',
      acceptQuote({ by: 'Ingrid Solbakken', way: 'by e-mail', detail: 'backline@example.com' }, 'on-bench', null),
    ),
    ...workedOff(30, 'tess', {
      signedDaysAgo: 29,
      round: {
        wall: 120.4,
        state: millstoneState(471, [tube(39.4, -42.6), tube(40, -42.6), tube(39.2, -42.6), tube(40.3, -42.6)]),
      },
      figures: {
        ...USUAL_FIGURES.millstone100,
        soakReading: 'V4 39.7, V5 40.2, V6 39.5, V7 40.6 mV',
        heard: 'both channels',
        screens: [1, 1, 1, 0.997],
      },
    }),
    on(4, '10:10', 'milo', move('uncollected')),
  ],
}

export const RETURNED: readonly Story[] = [openTransformer, notReproduced, notFetched]
