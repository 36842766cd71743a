/** A proposed tube, with its test records or none, and where it is to work. */
import { z } from 'zod'
import { gridVolts, name, voltsFromZero } from '@/lib/calc/input/quantities'
import { socketWiring, stageSupplies } from '@/lib/calc/input/stage-input'
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

const socket = z.strictObject({ socket: name('V3.'), tube, ...socketWiring })

const inCircuit = z.strictObject({
  given: z.literal('circuit').describe('The whole output stage is solved, every node at once.'),
  service: z.enum(['push-pull-class-ab', 'single-ended-class-a']).default('push-pull-class-ab'),
  sockets: z.array(socket).min(1).max(MOST_TUBES),
  ...stageSupplies,
  words: wordSet,
})

export const predictInput = z.discriminatedUnion('given', [atVoltages, inCircuit])

export type PredictInput = z.output<typeof predictInput>
export type AtVoltages = z.output<typeof atVoltages>
export type InCircuit = z.output<typeof inCircuit>
/** An output stage, whatever stands in its sockets. */
export type StageInput = Omit<InCircuit, 'given' | 'service' | 'words' | 'sockets'> & {
  readonly sockets: readonly Omit<InCircuit['sockets'][number], 'tube'>[]
}
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
