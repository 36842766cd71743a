/** Waiting for somebody else: for parts, or for an answer. */
import { foremanState, millstoneState, pipitState, tansyState, tube } from '@/seed/bench/states'
import { read, writeSheet } from '@/seed/jobs/bench'
import { chooseOne, chooseSet } from '@/seed/jobs/choice'
import { item, takeIn } from '@/seed/jobs/counter'
import { acceptQuote, fee, hours, part, send, writeQuote } from '@/seed/jobs/quoting'
import { on, type Story } from '@/seed/jobs/story'
import { printWorkOrder } from '@/seed/jobs/working'

const transformerOnOrder: Story = {
  amp: 'foremanTomasz',
  scenes: [
    on(
      12,
      '10:10',
      'milo',
      takeIn({
        fault: 'Reverb howls, and it smells warm at the left.',
        limit: 400,
        promised: -2,
        items: [item(1, 'footswitch, two buttons'), item(1, 'cover')],
      }),
    ),
    on(
      11,
      '10:30',
      'tess',
      read({
        phase: 'before',
        wall: 120.1,
        warmup: 25,
        state: foremanState(440, [tube(45.8, -46.1), tube(45.3, -46.1)]),
      }),
    ),
    on(
      11,
      '12:40',
      'tess',
      writeQuote({
        findings:
          'The reverb driver transformer has shorted turns and overheats. The output pair of our last job is within its window.',
        labour: [hours('Bench diagnosis', 1), hours('Replace reverb transformer', 1)],
        parts: [part('Reverb driver transformer, 22 kΩ to 8 Ω', 1, 42)],
      }),
    ),
    on(11, '12:50', 'tess', send('mail')),
    on(
      10,
      '10:15',
      'milo',
      acceptQuote(
        { by: 'Tomasz Wielgorski', way: 'by e-mail', detail: 'tomasz.w@example.net' },
        'waiting-for-parts',
        'card',
      ),
    ),
    on(9, '10:10', 'tess', printWorkOrder),
  ],
}

/** The tubes are reserved, the capacitor is on its way. */
const filterCan: Story = {
  amp: 'tansyDev',
  scenes: [
    on(
      9,
      '12:30',
      'milo',
      takeIn({
        fault: 'Motorboats on loud chords. Buzz that goes up and down with volume.',
        limit: 500,
        promised: 4,
        items: [],
      }),
    ),
    on(8, '10:20', 'anselm', writeSheet),
    on(
      8,
      '11:10',
      'anselm',
      read({
        phase: 'before',
        wall: 120.2,
        state: tansyState(309, [tube(36.1), tube(28.3)]),
      }),
    ),
    on(8, '12:00', 'anselm', chooseSet('output', { type: 'EL84', condition: 'current-production' })),
    on(
      8,
      '12:10',
      'anselm',
      writeQuote({
        findings:
          'Three sections of the filter can have dried out, and the supply sags.\nV5 is weak: the pair has drifted apart and idles below its window.',
        labour: [
          hours('Bench diagnosis', 1),
          hours('Replace filter capacitors', 2),
          hours('Fit and match output set, set idle current', 0.75),
        ],
        parts: [part('Filter can 32 + 32 + 16 µF, 450 V', 1, 38, 'Filter can, 32 + 32 + 16 µF 450 V')],
        fees: [fee('Match a pair or quad from stock', 20)],
      }),
    ),
    on(8, '12:20', 'anselm', send('mail')),
    on(
      6,
      '10:20',
      'milo',
      acceptQuote({ by: 'Dev Raghuvan', way: 'by phone', detail: '555-0153' }, 'waiting-for-parts', 'card'),
    ),
  ],
}

/** Held for two weeks: a quad. */
const quadHeld: Story = {
  amp: 'millstoneRui',
  scenes: [
    on(
      6,
      '11:00',
      'milo',
      takeIn({
        fault: 'Fell off the van. Sounds thin since.',
        limit: 300,
        promised: 5,
        items: [item(1, 'footswitch')],
      }),
    ),
    on(
      4,
      '10:30',
      'tess',
      read({
        phase: 'before',
        wall: 120.4,
        note: 'Glass of V7 loose in its base, V5 rattles.',
        state: millstoneState(475, [tube(38.8, -43.4), tube(33.4, -43.4), tube(39.5, -43.4), tube(27.9, -43.4)]),
      }),
    ),
    on(4, '11:40', 'tess', chooseSet('output', { type: 'EL34', condition: 'current-production' })),
    on(
      4,
      '12:00',
      'tess',
      writeQuote({
        findings: 'Two of four output tubes were damaged in the fall. Sockets, chassis and transformers are sound.',
        note: 'Insurance may ask for the damaged tubes: we keep them for you.',
        labour: [hours('Bench diagnosis', 1), hours('Fit and match output set, set idle current', 0.75)],
        fees: [fee('Match a pair or quad from stock', 20)],
      }),
    ),
    on(4, '12:10', 'tess', send('mail')),
  ],
}

/** The mail came back, so nobody has read the quote. */
const mailRefused: Story = {
  amp: 'foremanTannery1',
  scenes: [
    on(
      8,
      '10:40',
      'milo',
      takeIn({ fault: 'Room 1 again: dropped by a drummer, will not come on.', limit: 300, promised: -1, items: [] }),
    ),
    on(
      7,
      '10:30',
      'tess',
      read({
        phase: 'before',
        wall: 119.6,
        note: 'With a new fuse, on the variac first.',
        state: foremanState(447, [tube(44.2, -45.3), tube(28.7, -45.3)]),
      }),
    ),
    on(7, '12:10', 'tess', chooseSet('output', { type: '6L6GC', condition: 'current-production' })),
    on(
      7,
      '12:25',
      'tess',
      writeQuote({
        findings: 'V6 has a loose electrode and took the fuse. The socket of V6 is cracked.',
        labour: [
          hours('Bench diagnosis', 1),
          hours('Replace tube socket', 0.75),
          hours('Fit and match output set, set idle current', 0.75),
        ],
        parts: [part('Octal socket, ceramic', 1, 6.2)],
        fees: [fee('Match a pair or quad from stock', 20)],
      }),
    ),
    on(7, '12:30', 'tess', send('mail', '452 4.2.2 The mailbox is full, try again later')),
  ],
}

/** No answer for a month: the quote has lapsed, and what it held is free again. */
const lapsed: Story = {
  amp: 'pipitMarisol',
  scenes: [
    on(
      27,
      '15:10',
      'milo',
      takeIn({ fault: 'Quiet, and the sound goes away when I turn up.', limit: 100, promised: -19, items: [] }),
    ),
    on(26, '10:20', 'anselm', writeSheet),
    on(26, '10:50', 'anselm', read({ phase: 'before', wall: 119.3, state: pipitState(338, tube(28.6)) })),
    on(26, '11:20', 'anselm', chooseOne('V2', { type: '6V6GT', condition: 'used-tested' })),
    on(
      26,
      '11:40',
      'anselm',
      writeQuote({
        findings: 'The output tube is worn out: it idles at two thirds of what it should. The rectifier is still good.',
        labour: [hours('Bench diagnosis', 1), hours('Clean controls and sockets', 0.5)],
      }),
    ),
    on(26, '11:45', 'anselm', send('hand-over')),
  ],
}

export const WAITING: readonly Story[] = [transformerOnOrder, filterCan, quadHeld, mailRefused, lapsed]
