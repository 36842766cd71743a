/**
 * What a stocked tube would do in the sockets of one amplifier, handed to the choice of a set
 * in place of what it read at its test point.
 */
import type { Band } from '../circuit/band'
import type { Result } from '../result'
import type { Amps } from '../units'

/** In the socket where it is highest, as all sockets of the group hold tubes like it. */
export type PredictedTube = {
  /** Amperes, 95 %. */
  readonly plateCurrent: Band
  /** Half of the 95 % band that its own readings alone would leave: no doubt of curves, circuit or carrying, which others share. */
  readonly byReadings: Amps
  /** Half of the 95 % band that carrying its readings over from another instrument adds. Left out: they were not carried. */
  readonly byCarrying?: Amps
  /** Siemens, 95 %. */
  readonly transconductance: Band
  /** Watts, 95 %. */
  readonly plateDissipation: Band
  /** Well outside the printed rows of its type. */
  readonly extrapolated: boolean
}

export type Predictions = {
  /** ISO date of the readings that the circuit was made from. */
  readonly readOn: string
  /** By tube id; a fault is a whole sentence. A tube that is not in it has no test to predict from. */
  readonly ofTube: ReadonlyMap<string, Result<PredictedTube, string>>
}

export function predictedTube(predictions: Predictions | undefined, tubeId: string): PredictedTube | null {
  const found = predictions?.ofTube.get(tubeId)
  return found?.ok ? found.value : null
}
