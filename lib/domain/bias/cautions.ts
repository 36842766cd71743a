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
  | { readonly kind: 'screen-not-above-cathode'; readonly volts: Volts }
  | { readonly kind: 'dead-socket'; readonly current: Amps }
  | { readonly kind: 'wall-high'; readonly wall: Volts; readonly marked: Volts; readonly percentHigh: number }
  | { readonly kind: 'above-meter-range'; readonly volts: Volts; readonly range: Volts }

/** Below this no output tube is at work. Common practice, no source. */
export const DEAD_SOCKET_CURRENT = amps(0.001)
/** Smaller positive grid readings are the meter's zero. Common practice, no source. */
export const GRID_POSITIVE_FROM = volts(0.1)
/** Common practice, no source. */
export const WALL_HIGH_PERCENT = 3

type Parts = {
  readonly plateToCathodeVolts: Banded
  readonly cathodeAmps: Banded
  readonly plateAmps: Banded
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
  const found: Caution[] = []
  if (gridVoltage !== null && gridVoltage > GRID_POSITIVE_FROM) {
    found.push({ kind: 'grid-positive', volts: gridVoltage, bias })
  }
  if (screenVoltage !== null && screenVoltage <= (cathodeVoltageOf(reading) ?? 0)) {
    found.push({ kind: 'screen-not-above-cathode', volts: screenVoltage })
  }
  if (parts.plateAmps.value < DEAD_SOCKET_CURRENT) {
    found.push({ kind: 'dead-socket', current: amps(parts.plateAmps.value) })
  }
  return found
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
