/** `calc discharge`: how long a reservoir stays dangerous, what it holds, what the bleeder takes at first. */
import { z } from 'zod'
import { calculator, type Faults } from '@/lib/calc/calculator'
import { tolerancePercent } from '@/lib/calc/input/quantities'
import { figure } from '@/lib/calc/output/figure'
import {
  type Discharge,
  type DischargeFault,
  reservoirDischarge,
} from '@/lib/domain/circuit/checks/reservoir-discharge'
import { fail, ok, type Result } from '@/lib/domain/result'
import { ohms, volts } from '@/lib/domain/units'

const input = z.strictObject({
  capacitanceMicrofarads: z
    .number()
    .gt(0)
    .max(1_000_000)
    .describe('Whole capacitance: of two in parallel the sum, of two alike in series half of one.'),
  chargedVolts: z.number().min(0).max(5000).describe('What it is charged to.'),
  bleederKilohms: z.number().gt(0).max(1_000_000).describe('All it discharges through; nothing else draws.'),
  safeVolts: z.number().gt(0).max(5000).describe('What counts as discharged. Your own rule; above 0 V.'),
  capacitanceTolerancePercent: tolerancePercent(
    'How far above its print the capacitance may be. 20 is common practice for electrolytics, no source.',
  ).default(20),
  bleederTolerancePercent: tolerancePercent('How far above its print the resistance may be.').default(5),
})

const CAUTIONS = [
  'A computed time is no proof: a resistor may be open. Measure before touching, and again a minute later: a capacitor can recover some of its volts by itself.',
  'The resistor needs the first instant in its ratings: that many watts, and the whole voltage across it.',
]

const PATHS: Readonly<Record<DischargeFault, keyof z.output<typeof input>>> = {
  'capacitance-not-positive': 'capacitanceMicrofarads',
  'resistance-not-positive': 'bleederKilohms',
  'safe-not-positive': 'safeVolts',
  'charge-negative': 'chargedVolts',
}

const above = (percent: number): number => 1 + percent / 100

/** Bounds of the schema keep all of these out; should one come, it is said and not thrown. */
function refused(code: DischargeFault): Result<never, Faults> {
  const path = PATHS[code]
  return fail([{ code, path, sentence: `${path} cannot be computed with: ${code.replaceAll('-', ' ')}.` }])
}

function calculate(given: z.output<typeof input>): Result<object, Faults> {
  const nominal: Discharge = {
    capacitanceFarads: given.capacitanceMicrofarads * 1e-6,
    charged: volts(given.chargedVolts),
    resistance: ohms(given.bleederKilohms * 1000),
    safe: volts(given.safeVolts),
  }
  const slowest: Discharge = {
    ...nominal,
    capacitanceFarads: nominal.capacitanceFarads * above(given.capacitanceTolerancePercent),
    resistance: ohms(nominal.resistance * above(given.bleederTolerancePercent)),
  }
  const [result, late] = [reservoirDischarge(nominal), reservoirDischarge(slowest)]
  if (!result.ok) return refused(result.fault)
  if (!late.ok) return refused(late.fault)
  return ok({
    seconds: figure(result.value.time),
    secondsWithinTolerances: figure(late.value.time),
    timeConstantSeconds: figure(nominal.resistance * nominal.capacitanceFarads),
    energyJoules: figure(result.value.energyJoules),
    peakBleederWatts: figure(result.value.peak),
    cautions: CAUTIONS,
  })
}

export const discharge = calculator({
  title: 'Reservoir discharge through a resistor',
  input,
  example: { capacitanceMicrofarads: 100, chargedVolts: 450, bleederKilohms: 220, safeVolts: 60 },
  calculate,
})
