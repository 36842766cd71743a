/**
 * Heater current against what the winding is built for: a sum (Kirchhoff's first law)
 * over the tubes in parallel on one winding.
 *
 * Printed heater currents spread by some per cent from tube to tube, and a cold heater
 * takes several times as much for a second or so: a winding used to the last ampere
 * runs warm, no more is claimed here.
 */
import { type Amps, amps, type Ratio, ratio } from '@/lib/domain/units'

export type HeaterBudget = {
  readonly drawn: Amps
  /** Negative: overdrawn by that. */
  readonly left: Amps
  readonly share: Ratio
}

export function heaterBudget(heaterCurrents: readonly Amps[], winding: Amps): HeaterBudget {
  if (!(winding > 0)) throw new Error(`A heater winding is built for more than 0 A, got ${winding} A`)
  const drawn = heaterCurrents.reduce((sum, one) => sum + one, 0)
  return { drawn: amps(drawn), left: amps(winding - drawn), share: ratio(drawn / winding) }
}
