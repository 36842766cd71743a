/** An output stage as the calculators take it: wiring and supplies, without its tubes. */
import { z } from 'zod'
import { MOST_TUBES } from '@/lib/domain/circuit/output-stage'
import { gridVolts, milliampsFromZero, name, ohmsFromZero, voltsFromZero } from './quantities'

/** How one socket is wired. */
export const socketWiring = {
  side: z.enum(['A', 'B']).default('A').describe('Half of the primary; single-ended: A.'),
  gridSupply: name('Id of a grid supply. Left out: the grid leak goes to chassis.').optional(),
  gridLeakOhms: ohmsFromZero('Grid leak.').default(0),
  reverseGridMicroamps: z.number().min(0).max(1_000_000).default(0).describe('Leaves the tube by its grid.'),
  screenOhms: ohmsFromZero('Screen resistor of this tube.').default(0),
  senseOhms: ohmsFromZero('Resistor in this cathode alone.').default(0),
  biasResistor: name('Id of a bias resistor. Left out: the cathode returns to chassis.').optional(),
}

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

/** All but the sockets. */
export const stageSupplies = {
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
}
