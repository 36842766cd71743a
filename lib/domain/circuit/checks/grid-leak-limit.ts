/**
 * Grid leak against the printed maximum grid-circuit resistance.
 *
 * Sheets print two limits, the lower for grid-supplied ("fixed") bias: there a rising
 * grid current lifts the grid, more current heats the tube, and nothing holds it back; a
 * cathode resistor does. A leak shared by n tubes carries the grid current of all, so the
 * limit for it is the printed one over n.
 * Source: "Receiving Tube Manual" RC-series, chapter on tube ratings (from memory).
 */
import { type Amps, type Ohms, ohms, type Volts, volts } from '@/lib/domain/units'

export type GridLeakLimits = { readonly gridSupplied: Ohms | null; readonly cathodeResistor: Ohms | null }

export type GridLeakCheck = {
  /** For this leak as it is shared; null when none is printed for this bias. */
  readonly limit: Ohms | null
  readonly above: boolean | null
}

export function gridLeakCheck(
  gridLeak: Ohms,
  sharedBy: number,
  bias: keyof GridLeakLimits,
  limits: GridLeakLimits,
): GridLeakCheck {
  if (!(Number.isInteger(sharedBy) && sharedBy >= 1)) throw new Error(`A grid leak has 1 tube or more, got ${sharedBy}`)
  const printed = limits[bias]
  if (printed === null) return { limit: null, above: null }
  const limit = ohms(printed / sharedBy)
  return { limit, above: gridLeak > limit }
}

/** How far reverse grid current lifts the grid: 1.5 µA in 220 kΩ is 0.33 V. Ohm's law. */
export const gridLift = (reverseGridCurrent: Amps, gridLeak: Ohms): Volts => volts(reverseGridCurrent * gridLeak)
