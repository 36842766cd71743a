/**
 * Plate current to aim for: the middle of the window at the plate-to-cathode
 * volts just read,  Ia = share · Pa,max / Vak,  and what the meter then shows.
 *
 * Screen current is taken to change in step with plate current. Plate volts
 * move when the current is changed, so the reading must be repeated; the target
 * is the next step, not the end.
 */
import {
  type Amps,
  amps,
  type Ohms,
  ohms,
  type Ratio,
  ratio,
  type Volts,
  volts,
  type Watts,
  watts,
} from '@/lib/domain/units'
import type { Banded } from './banded'
import type { IdleWindow, SocketReading } from './idle-reading'

export type IdleTarget = {
  /** Share of the plate rating aimed at. */
  readonly share: Ratio
  readonly plateCurrent: Amps
  /** To add (+, hotter) or to take away (−, colder). */
  readonly change: Amps
  /**
   * What the meter should show. Null with a cathode-bias resistor: there the
   * resistor itself is changed, and the current read again.
   */
  readonly meterReading: { readonly across: string; readonly resistance: Ohms; readonly volts: Volts } | null
}

/** Current that dissipates `share` of `rating`; the voltage is plate to cathode and positive. */
export function currentAtShare(share: Ratio, rating: Watts, plateToCathode: Volts): Amps {
  if (plateToCathode <= 0) throw new Error(`Plate to cathode must be above 0 V, got ${plateToCathode} V`)
  return amps((share * rating) / plateToCathode)
}

type Readings = {
  readonly plateToCathodeVolts: Banded
  readonly plateAmps: Banded
  readonly cathodeAmps: Banded
  readonly plateRatingWatts: number | null
}

function cathodePerPlate({ variant }: SocketReading, { plateAmps, cathodeAmps }: Readings): number {
  if (plateAmps.value > 0) return cathodeAmps.value / plateAmps.value
  return 1 / (1 - (variant.typicalScreenShare?.share ?? 0))
}

function readingAt(reading: SocketReading, parts: Readings, plateCurrent: Amps): IdleTarget['meterReading'] {
  const { method } = reading
  if (method.kind === 'cathode-bias') return null
  const { id: across, resistance } = method.resistor
  // On the same winding the warm resistance is unknown, but drop per ampere is what was just read.
  const dropPerAmp =
    method.kind === 'half-primary-drop' && parts.plateAmps.value > 0 ? method.drop / parts.plateAmps.value : null
  const current = method.kind === 'cathode-sense' ? plateCurrent * cathodePerPlate(reading, parts) : plateCurrent
  const sharedBy = method.kind === 'cathode-sense' ? 1 : method.sharedBy
  return { across, resistance: ohms(resistance), volts: volts(current * (dropPerAmp ?? resistance * sharedBy)) }
}

/** Null without a rating, or with no voltage across the tube. */
export function idleTarget(reading: SocketReading, parts: Readings, window: IdleWindow): IdleTarget | null {
  const { plateRatingWatts, plateToCathodeVolts, plateAmps } = parts
  if (plateRatingWatts === null || plateToCathodeVolts.value <= 0) return null
  const share = ratio((window.low + window.high) / 2)
  const plateCurrent = currentAtShare(share, watts(plateRatingWatts), volts(plateToCathodeVolts.value))
  return {
    share,
    plateCurrent,
    change: amps(plateCurrent - plateAmps.value),
    meterReading: readingAt(reading, parts, plateCurrent),
  }
}
