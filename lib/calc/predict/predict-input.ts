/** A proposed tube, with its test records or none, and where it is to work. */
import { z } from 'zod'
import { gridVolts, milliampsFromZero, name, ohmsFromZero, voltsFromZero } from '@/lib/calc/input/quantities'
import { wordSet } from '@/lib/calc/input/word-set'
import { MOST_TUBES } from '@/lib/domain/circuit/output-stage'

const reading = (meaning: string) =>
  z
    .strictObject({
      value: z.number().gt(0).max(10_000).describe(meaning),
      standard: z.number().gt(0).max(10_000).describe('Standard uncertainty, same unit; half of a 95 % band.'),
    })
    .describe(meaning)

const electrodes = {
  plateToCathodeVolts: voltsFromZero('Plate to cathode.'),
  screenToCathodeVolts: voltsFromZero('Screen to cathode. A triode has none; every other tube needs it.').optional(),
  gridToCathodeVolts: gridVolts('Control grid to cathode, below zero.'),
}

const record = z.strictObject({
  ...electrodes,
  plateMilliamps: reading('Plate current, mA.'),
  transconductanceMilliampsPerVolt: reading('Transconductance, mA/V.').optional(),
  screenMilliamps: reading('Screen current, mA.').optional(),
})

const tube = z.strictObject({
  type: name('Designation.'),
  section: z.enum(['first', 'second']).default('first').describe('Second: the other section of an unlike twin.'),
  records: z
    .array(record)
    .max(20)
    .default([])
    .describe('Test records; none: an average tube of the type, with its spread.'),
})

const atVoltages = z.strictObject({
  given: z.literal('voltages').describe('Electrode voltages are known and stay.'),
  tube,
  at: z.strictObject(electrodes),
  words: wordSet,
})

const socket = z.strictObject({
  socket: name('V3.'),
  tube,
  side: z.enum(['A', 'B']).default('A').describe('Half of the primary; single-ended: A.'),
  gridSupply: name('Id of a grid supply. Left out: the grid leak goes to chassis.').optional(),
  gridLeakOhms: ohmsFromZero('Grid leak.').default(0),
  reverseGridMicroamps: z.number().min(0).max(1_000_000).default(0).describe('Leaves the tube by its grid.'),
  screenOhms: ohmsFromZero('Screen resistor of this tube.').default(0),
  senseOhms: ohmsFromZero('Resistor in this cathode alone.').default(0),
  biasResistor: name('Id of a bias resistor. Left out: the cathode returns to chassis.').optional(),
})

const drawnMilliamps = milliampsFromZero('What the rest of the amplifier draws there.').default(0)

const screenFeed = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('dropper').describe('From the reservoir through a resistor or choke.'),
    ohms: ohmsFromZero('0: the screens stand on the reservoir.'),
    drawnMilliamps,
  }),
  z.strictObject({
    kind: z.literal('own-supply'),
    openCircuitVolts: voltsFromZero('Without load, at nominal mains.'),
    sourceOhms: ohmsFromZero('Source resistance.'),
    drawnMilliamps,
  }),
  z.strictObject({
    kind: z.literal('primary-tap').describe('Ultra-linear.'),
    tapPercent: z.number().min(0).max(100).describe('Share of the half primary between reservoir and tap.'),
  }),
  z.strictObject({
    kind: z
      .literal('triode-strapped')
      .describe(
        'Each screen through its resistor to its own plate: both currents and watts are put out as the plate’s.',
      ),
  }),
])

const supply = z.strictObject({
  openCircuitVolts: voltsFromZero('Reservoir without load, at nominal mains, before any drop in a rectifier tube.'),
  sourceOhms: ohmsFromZero('From two readings of reservoir volts at two currents, not from the winding.'),
  rectifier: name('Designation of the rectifier tube. Left out: silicon.').optional(),
  drawnMilliamps,
})

const inCircuit = z.strictObject({
  given: z.literal('circuit').describe('The whole output stage is solved, every node at once.'),
  service: z.enum(['push-pull-class-ab', 'single-ended-class-a']).default('push-pull-class-ab'),
  sockets: z.array(socket).min(1).max(MOST_TUBES),
  gridSupplies: z
    .array(z.strictObject({ id: name('Id.'), volts: gridVolts('To chassis, at nominal mains, below zero.') }))
    .max(MOST_TUBES)
    .default([]),
  biasResistors: z
    .array(z.strictObject({ id: name('Id.'), ohms: ohmsFromZero('To chassis, shared by every tube that names it.') }))
    .max(MOST_TUBES)
    .default([]),
  halfPrimaryOhms: z.strictObject({ A: ohmsFromZero('Side A.'), B: ohmsFromZero('Side B.').default(0) }),
  screenFeed,
  supply,
  mainsPercent: z
    .number()
    .min(10)
    .max(200)
    .default(100)
    .describe('110: mains 10 % above that at which the voltages hold. Every supply follows.'),
  words: wordSet,
})

export const predictInput = z.discriminatedUnion('given', [atVoltages, inCircuit])

export type PredictInput = z.output<typeof predictInput>
export type AtVoltages = z.output<typeof atVoltages>
export type InCircuit = z.output<typeof inCircuit>
export type TubeInput = z.output<typeof tube>
export type ElectrodesInput = Pick<z.output<typeof record>, keyof typeof electrodes>

const PAIR = { screenOhms: 1000, gridLeakOhms: 220_000, senseOhms: 1, gridSupply: 'bias' }

export const predictExample: z.input<typeof predictInput> = {
  given: 'circuit',
  sockets: [
    {
      socket: 'V3',
      side: 'A',
      ...PAIR,
      tube: {
        type: 'EL34',
        records: [
          {
            plateToCathodeVolts: 250,
            screenToCathodeVolts: 250,
            gridToCathodeVolts: -12.2,
            plateMilliamps: { value: 96, standard: 1 },
            transconductanceMilliampsPerVolt: { value: 10.6, standard: 0.3 },
          },
        ],
      },
    },
    { socket: 'V4', side: 'B', ...PAIR, tube: { type: 'EL34' } },
  ],
  gridSupplies: [{ id: 'bias', volts: -42 }],
  halfPrimaryOhms: { A: 41, B: 44 },
  screenFeed: { kind: 'dropper', ohms: 470, drawnMilliamps: 12 },
  supply: { openCircuitVolts: 465, sourceOhms: 90 },
}
