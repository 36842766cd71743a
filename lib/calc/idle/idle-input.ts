/** Bench readings of one or more sockets. All volts DC, no signal, to chassis, after warm-up. */
import { z } from 'zod'
import {
  dropMillivolts,
  gridVolts,
  milliampsFromZero,
  name,
  ohmsAboveZero,
  tolerancePercent,
  voltsFromZero,
} from '@/lib/calc/input/quantities'
import { wordSet } from '@/lib/calc/input/word-set'
import { MOST_WARMING_CELSIUS } from '@/lib/domain/bias/idle-fault'

const MOST_SOCKETS = 16

const resistor = {
  ohms: ohmsAboveZero('Measured where possible.'),
  tolerancePercent: tolerancePercent('Limit of error of that value; of a measured one, of the measurement.'),
  part: name('One name is one part: sockets that share a resistance name the same.').optional(),
}
const sharedBy = z
  .int()
  .min(1)
  .max(MOST_SOCKETS)
  .describe('How many tubes the whole current belongs to. Above 1, name the part.')
  .default(1)

const current = z
  .discriminatedUnion('method', [
    z.strictObject({
      method: z.literal('cathode-sense').describe('A resistor of 1 Ω or so in this cathode alone.'),
      dropMillivolts: dropMillivolts('Across that resistor.'),
      ...resistor,
    }),
    z.strictObject({
      method: z.literal('cathode-bias').describe('The cathode-bias resistor.'),
      dropVolts: voltsFromZero('Across that resistor.'),
      ...resistor,
      sharedBy,
    }),
    z.strictObject({
      method: z.literal('half-primary-drop').describe('Half of the output transformer primary.'),
      dropMillivolts: dropMillivolts('Across that half.'),
      ...resistor,
      sharedBy,
      possibleWarmingCelsius: z
        .number()
        .min(0)
        .max(MOST_WARMING_CELSIUS)
        .describe('The most the copper may have warmed since its ohms were read; 0: read hot.'),
    }),
  ])
  .describe('How the current was found.')

const screenCurrent = z
  .discriminatedUnion('source', [
    z.strictObject({ source: z.literal('typical-share').describe('Not measured: the usual share of the type.') }),
    z.strictObject({
      source: z.literal('screen-resistor-drop'),
      dropVolts: voltsFromZero('Across the screen resistor.'),
      ...resistor,
    }),
    z.strictObject({
      source: z.literal('stated'),
      milliamps: milliampsFromZero('Screen current.'),
      standardMilliamps: milliampsFromZero('Its standard uncertainty; 0: taken as exact.'),
    }),
    z.strictObject({ source: z.literal('triode-strapped').describe('Screen joined to plate.') }),
  ])
  .default({ source: 'typical-share' })

const socket = z.strictObject({
  socket: name('V3.'),
  type: name('Designation of the tube in it.'),
  side: z.enum(['A', 'B']).optional().describe('Half of the primary it works on.'),
  plateVolts: voltsFromZero('Plate to chassis.'),
  cathodeVolts: gridVolts('Cathode to chassis. Left out: the drop of a cathode method.').optional(),
  screenVolts: voltsFromZero('Screen to chassis. Left out: no screen dissipation.').optional(),
  gridVolts: gridVolts('Control grid to chassis, below zero when grid-supplied.').optional(),
  current,
  screenCurrent,
})

const meter = z
  .strictObject({
    percentOfReading: z.number().min(0).max(20).describe('0.5 for ± (0.5 % + 2 counts).'),
    counts: z.number().min(0).max(1000).describe('2 for ± (0.5 % + 2 counts).'),
    displayCounts: z.int().min(1).max(10_000_000).describe('6000 for a display that goes to 5999.'),
  })
  .describe('DC volts accuracy of the one meter all was read with.')

const windowPercent = z
  .strictObject({
    low: z.number().gt(0).max(200).describe('Per cent of the plate rating, inclusive.'),
    high: z.number().gt(0).max(200).describe('Per cent of the plate rating, inclusive.'),
  })
  .describe('Left out: common practice, 60 to 70 for grid-supplied push-pull, else 80 to 100.')

export const idleInput = z.strictObject({
  bias: z.enum(['grid-supplied', 'cathode-resistor']),
  service: z.enum(['push-pull-class-ab', 'single-ended-class-a']).default('push-pull-class-ab'),
  meter,
  windowPercent: windowPercent.optional(),
  wallVolts: z.number().gt(0).max(500).optional().describe('RMS at the wall while reading.'),
  markedMainsVolts: z.number().gt(0).max(500).optional().describe('What the amplifier is marked or set for.'),
  sockets: z.array(socket).min(1).max(MOST_SOCKETS),
  words: wordSet,
})

export type IdleInput = z.output<typeof idleInput>
export type SocketInput = IdleInput['sockets'][number]

export const idleExample: z.input<typeof idleInput> = {
  bias: 'grid-supplied',
  meter: { percentOfReading: 0.5, counts: 2, displayCounts: 6000 },
  wallVolts: 121,
  markedMainsVolts: 120,
  sockets: [
    {
      socket: 'V3',
      type: 'EL34',
      side: 'A',
      plateVolts: 450,
      cathodeVolts: 0,
      screenVolts: 440,
      gridVolts: -38,
      current: {
        method: 'half-primary-drop',
        dropMillivolts: 1594,
        ohms: 41,
        tolerancePercent: 0.5,
        possibleWarmingCelsius: 0,
      },
      screenCurrent: { source: 'screen-resistor-drop', dropVolts: 5.2, ohms: 1000, tolerancePercent: 1 },
    },
    {
      socket: 'V4',
      type: 'EL34',
      side: 'B',
      plateVolts: 450,
      screenVolts: 440,
      gridVolts: -38,
      current: { method: 'cathode-sense', dropMillivolts: 41.2, ohms: 1, tolerancePercent: 1 },
    },
  ],
}
