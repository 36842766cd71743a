/** On the bench, or only just in. */
import { foremanState, pipitState, tansyState, tube } from '@/seed/bench/states'
import { read, writeSheet } from '@/seed/jobs/bench'
import { chooseSet } from '@/seed/jobs/choice'
import { item, takeIn } from '@/seed/jobs/counter'
import { fee, hours, writeQuote } from '@/seed/jobs/quoting'
import { on, type Story } from '@/seed/jobs/story'

/** So near the upper limit that the meter cannot say. */
const uncertain: Story = {
  amp: 'foremanRui',
  scenes: [
    on(
      6,
      '14:20',
      'milo',
      takeIn({
        fault: 'Second thoughts about the new pair: seems warmer than before.',
        limit: 100,
        promised: 2,
        items: [],
      }),
    ),
    on(
      3,
      '10:30',
      'tess',
      read({
        phase: 'before',
        wall: 119.9,
        warmup: 30,
        note: 'Same trim setting as after the last job.',
        state: foremanState(440, [tube(50.6, -44.4), tube(49.4, -44.4)]),
      }),
    ),
  ],
}

/** Self-biased near its rating, as it should be. */
const nearRating: Story = {
  amp: 'tansyKeziah',
  scenes: [
    on(
      5,
      '12:10',
      'milo',
      takeIn({
        fault: 'Buzz on the second string only, at the fifth fret. Maybe the cabinet?',
        limit: 150,
        promised: 6,
        items: [item(1, 'speaker cable')],
      }),
    ),
    on(
      3,
      '14:10',
      'anselm',
      read({
        phase: 'before',
        wall: 120.3,
        state: tansyState(316, [tube(42.4), tube(41.6)], { V3: { plateVolts: 214, cathodeVolts: 58.2 } }),
      }),
    ),
  ],
}

/** Marked 117 V, and the wall gives 123 V. */
const highLine: Story = {
  amp: 'pipitMillrace',
  scenes: [
    on(
      4,
      '14:40',
      'milo',
      takeIn({
        fault: 'Transformer too hot to touch after the Sunday service.',
        limit: 150,
        promised: 0,
        items: [item(1, 'extension cord')],
      }),
    ),
    on(2, '10:20', 'anselm', writeSheet),
    on(
      2,
      '11:00',
      'anselm',
      read({
        phase: 'before',
        wall: 123,
        warmup: 30,
        note: 'At the hall it is as high: measured there.',
        state: pipitState(336, tube(43.6)),
      }),
    ),
  ],
}

/** A draft that is not out yet. */
const draftQuote: Story = {
  amp: 'foremanDev',
  scenes: [
    on(
      4,
      '10:50',
      'milo',
      takeIn({
        fault: 'Crackles when it warms up, then one side of the sound seems to drop out.',
        limit: 250,
        promised: 4,
        items: [item(1, 'speaker cable')],
      }),
    ),
    on(
      2,
      '12:10',
      'tess',
      read({
        phase: 'before',
        wall: 119.9,
        state: foremanState(445, [tube(46.2, -45.9), tube(34.1, -45.9)]),
      }),
    ),
    on(1, '10:20', 'tess', chooseSet('output', { type: '6L6GC', condition: 'current-production' })),
    on(
      1,
      '10:40',
      'tess',
      writeQuote({
        findings: 'V6 loses current as it warms.',
        labour: [hours('Bench diagnosis', 1), hours('Fit and match output set, set idle current', 0.75)],
        fees: [fee('Match a pair or quad from stock', 20)],
      }),
    ),
  ],
}

const channelHum: Story = {
  amp: 'type240Hollis',
  scenes: [
    on(
      2,
      '14:30',
      'milo',
      takeIn({
        fault: 'Low hum in the right channel since Tuesday. Same with the inputs shorted.',
        limit: 300,
        promised: 7,
        items: [item(1, 'owner’s notebook with readings')],
      }),
    ),
  ],
}

const crackle: Story = {
  amp: 'droverOdalys',
  scenes: [
    on(
      2,
      '11:50',
      'milo',
      takeIn({
        fault: 'Volume control crackles, and the pilot lamp is out.',
        limit: 120,
        promised: 5,
        oldParts: true,
        items: [item(1, 'footswitch for the tremolo')],
      }),
    ),
  ],
}

const backAgain: Story = {
  amp: 'tansyYusuf',
  scenes: [
    on(
      1,
      '12:20',
      'milo',
      takeIn({
        fault: 'It cut out again, twice, both times after I moved the cord.',
        settings: 'Both channels; came back when the plug was pushed.',
        limit: 200,
        promised: 8,
        items: [item(1, 'power cord')],
      }),
    ),
  ],
}

export const ON_BENCH: readonly Story[] = [uncertain, nearRating, highLine, draftQuote]
export const JUST_IN: readonly Story[] = [channelHum, crackle, backAgain]
