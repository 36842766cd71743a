/**
 * Leakage of a coupling capacitor, guessed from how far the grid stands off its supply.
 *
 * All that enters by the capacitor leaves by the grid leak (Ohm's law, no grid current):
 *   I = (Vgrid − Vsupply)/Rleak,   insulation = (Vdriver − Vgrid)/I.
 * Reverse grid current of the tube reads the same. Pull the tube: what stays is the
 * capacitor, what goes was the tube. The meter is taken to draw nothing; one of 10 MΩ
 * at a 220 kΩ leak reads the shift 2 % low.
 */
import { type Amps, amps, type Ohms, ohms, type Volts } from '@/lib/domain/units'

export type CouplingReading = {
  readonly grid: Volts
  /** At the far end of the grid leak: 0 V where it goes to chassis. */
  readonly gridSupply: Volts
  readonly gridLeak: Ohms
  /** At the other side of the capacitor. */
  readonly driverPlate: Volts
}

export type CouplingLeakage = {
  /** Into the grid node. Negative: the grid stands below its supply, which no leak from a plate explains. */
  readonly current: Amps
  /** Null when nothing leaks in. */
  readonly insulation: Ohms | null
}

export function couplingLeakage({ grid, gridSupply, gridLeak, driverPlate }: CouplingReading): CouplingLeakage {
  if (!(gridLeak > 0)) throw new Error(`A grid leak is above 0 Ω, got ${gridLeak} Ω`)
  const current = amps((grid - gridSupply) / gridLeak)
  const leaksIn = current > 0 && driverPlate > grid
  return { current, insulation: leaksIn ? ohms((driverPlate - grid) / current) : null }
}
