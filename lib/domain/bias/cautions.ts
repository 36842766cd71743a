/**
 * What to warn of beside the verdict. Nothing here stops a reading: many amps
 * exceed a printed voltage and the better old tubes stand it (common practice,
 * no source), so the limit and its rating system are named and the person
 * decides.
 */

import type { RatingSystem } from '@/lib/domain/tube/tube-variant'
import { type Amps, amps, type Volts, volts, type Watts, watts } from '@/lib/domain/units'
import type { Banded } from './banded'
import { type BiasKind, cathodeVoltageOf, type IdleContext, type SocketReading } from './idle-reading'
import { HIGHEST_RANGE } from './meter'

type Over<Kind extends string, Unit> = {
  readonly kind: Kind
  readonly value: Unit
  readonly limit: Unit
  readonly system: RatingSystem
}

export type Caution =
  | Over<'plate-volts-over', Volts>
  | Over<'screen-volts-over', Volts>
  | Over<'cathode-current-over', Amps>
  | Over<'screen-dissipation-over', Watts>
  | { readonly kind: 'grid-positive'; readonly volts: Volts; readonly bias: BiasKind }
  /** Grid-supplied, and next to no voltage is there. */
  | { readonly kind: 'grid-supply-lost'; readonly volts: Volts }
  /** Plate to cathode. */
  | { readonly kind: 'plate-volts-lost'; readonly volts: Volts }
  | { readonly kind: 'screen-not-above-cathode'; readonly volts: Volts }
  /** `asVolts`: what was typed, where the same figure in volts would be a usual drop. Null: it would not. */
  | { readonly kind: 'dead-socket'; readonly current: Amps; readonly asVolts: Volts | null }
  | { readonly kind: 'wall-high'; readonly wall: Volts; readonly marked: Volts; readonly percentHigh: number }
  | { readonly kind: 'above-meter-range'; readonly volts: Volts; readonly range: Volts }

/** Below this no output tube is at work. Common practice, no source. */
export const DEAD_SOCKET_CURRENT = amps(0.001)
/** Smaller positive grid readings are the meter's zero. Common practice, no source. */
export const GRID_POSITIVE_FROM = volts(0.1)
/** A supplied grid nearer to chassis than this has lost its supply. Common practice, no source. */
export const GRID_SUPPLY_LOST_WITHIN = volts(1)
/** Below this no output stage idles. Common practice, no source. */
export const PLATE_LOST_BELOW = volts(50)
/** A screen with less than this share of the plate-to-cathode volts has lost its supply. Common practice, no source. */
export const SCREEN_LOST_SHARE = 0.1
/** Common practice, no source. */
export const WALL_HIGH_PERCENT = 3

/** Found before anything is set: turning the idle current would hide the fault, or feed it. */
const MEND_FIRST: readonly Caution['kind'][] = ['dead-socket', 'grid-positive', 'grid-supply-lost', 'plate-volts-lost']

export const isMendedFirst = ({ kind }: Caution): boolean => MEND_FIRST.includes(kind)

type Parts = {
  readonly plateToCathodeVolts: Banded
  readonly cathodeAmps: Banded
  readonly plateAmps: Banded
  readonly plateRatingWatts: number | null
  readonly screenWatts: Banded | null
}

function ratingCautions({ variant, screenVoltage, ...reading }: SocketReading, parts: Parts): Caution[] {
  const { ratings } = variant
  if (!ratings) return []
  const { system, plateVolts, screenVolts, cathodeMilliamps, screenWatts } = ratings
  const cathode = cathodeVoltageOf({ variant, screenVoltage, ...reading }) ?? 0
  const plate = parts.plateToCathodeVolts.value
  const screen = screenVoltage === null ? null : screenVoltage - cathode
  const current = parts.cathodeAmps.value
  const power = parts.screenWatts?.value ?? null
  const found: Caution[] = []
  if (plateVolts && plate > plateVolts.value) {
    found.push({ kind: 'plate-volts-over', value: volts(plate), limit: volts(plateVolts.value), system })
  }
  if (screenVolts && screen !== null && screen > screenVolts.value) {
    found.push({ kind: 'screen-volts-over', value: volts(screen), limit: volts(screenVolts.value), system })
  }
  if (cathodeMilliamps && 1000 * current > cathodeMilliamps.value) {
    const limit = amps(cathodeMilliamps.value / 1000)
    found.push({ kind: 'cathode-current-over', value: amps(current), limit, system })
  }
  if (screenWatts && power !== null && power > screenWatts.value) {
    found.push({ kind: 'screen-dissipation-over', value: watts(power), limit: watts(screenWatts.value), system })
  }
  return found
}

function circuitCautions(reading: SocketReading, { bias }: IdleContext, parts: Parts): Caution[] {
  const { gridVoltage, screenVoltage } = reading
  const plate = parts.plateToCathodeVolts.value
  const found: Caution[] = []
  if (gridVoltage !== null && gridVoltage > GRID_POSITIVE_FROM) {
    found.push({ kind: 'grid-positive', volts: gridVoltage, bias })
  } else if (gridVoltage !== null && bias === 'grid-supplied' && gridVoltage > -GRID_SUPPLY_LOST_WITHIN) {
    found.push({ kind: 'grid-supply-lost', volts: gridVoltage })
  }
  if (plate < PLATE_LOST_BELOW) found.push({ kind: 'plate-volts-lost', volts: volts(plate) })
  if (screenVoltage !== null && screenVoltage - (cathodeVoltageOf(reading) ?? 0) <= SCREEN_LOST_SHARE * plate) {
    found.push({ kind: 'screen-not-above-cathode', volts: screenVoltage })
  }
  if (parts.plateAmps.value < DEAD_SOCKET_CURRENT) {
    found.push({ kind: 'dead-socket', current: amps(parts.plateAmps.value), asVolts: slippedDrop(reading, parts) })
  }
  return found
}

/** Stands in for a rating that is not known, only to tell a usual drop from an unusual one. */
const USUAL_RATING_WATTS = 25

/** A sense drop is typed in mV. Read in volts and typed as it stood, it comes out a thousand times too small. */
function slippedDrop({ method }: SocketReading, parts: Parts): Volts | null {
  if (method.kind !== 'cathode-sense') return null
  const { plateAmps, plateToCathodeVolts, plateRatingWatts } = parts
  const share = (1000 * plateAmps.value * plateToCathodeVolts.value) / (plateRatingWatts ?? USUAL_RATING_WATTS)
  return share > 0.1 && share < 2 ? volts(1000 * method.drop) : null
}

function benchCautions({ plateVoltage }: SocketReading, { wallVoltage, markedMainsVoltage }: IdleContext): Caution[] {
  const found: Caution[] = []
  if (wallVoltage !== null && markedMainsVoltage !== null && markedMainsVoltage > 0) {
    const percentHigh = 100 * (wallVoltage / markedMainsVoltage - 1)
    if (percentHigh > WALL_HIGH_PERCENT) {
      found.push({ kind: 'wall-high', wall: wallVoltage, marked: markedMainsVoltage, percentHigh })
    }
  }
  if (plateVoltage > HIGHEST_RANGE) {
    found.push({ kind: 'above-meter-range', volts: plateVoltage, range: HIGHEST_RANGE })
  }
  return found
}

export function cautionsOf(reading: SocketReading, context: IdleContext, parts: Parts): Caution[] {
  return [
    ...circuitCautions(reading, context, parts),
    ...ratingCautions(reading, parts),
    ...benchCautions(reading, context),
  ]
}
