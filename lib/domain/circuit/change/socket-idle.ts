/** One tube of a solved circuit in figures: currents and watts with their bands, against the ratings of its variant. */

import { type IdleVerdict, idleVerdict, idleWindow } from '@/lib/domain/bias/idle-verdict'
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import { type Band, timesBand } from '@/lib/domain/circuit/band'
import type { RatingSystem } from '@/lib/domain/tube/tube-variant'
import type { SolvedSeat } from './solved-circuit'

/** Computed throughout, never measured. */
export type SocketIdle = {
  readonly position: string
  readonly designation: string
  /** Of a stocked tube; '' otherwise. */
  readonly mark: string
  readonly isFitted: boolean
  /** To chassis. */
  readonly plateVolts: number
  readonly cathodeVolts: number
  readonly plateToCathodeVolts: Band
  /** Null: no screen of its own. */
  readonly screenToCathodeVolts: Band | null
  readonly gridToCathodeVolts: Band
  /** With the screen strapped to the plate: both together. */
  readonly plateAmps: Band
  readonly screenAmps: Band | null
  readonly cathodeAmps: Band
  readonly plateWatts: Band
  readonly plateRatingWatts: number | null
  readonly platePercent: Band | null
  readonly screenWatts: Band | null
  readonly screenRatingWatts: number | null
  readonly screenPercent: Band | null
  readonly ratingSystem: RatingSystem | null
  readonly ratingsStandIn: boolean
  readonly verdict: IdleVerdict
}

const percentOf = (power: Band | null, rating: number | null): Band | null =>
  power === null || rating === null || rating <= 0 ? null : timesBand(power, 100 / rating)

function verdictOf(percent: Band | null, { seat }: SolvedSeat, { service, windows }: AmpCircuit): IdleVerdict {
  const window = idleWindow({ bias: seat.socket.bias, service, windows })
  const half = percent ? (percent.high - percent.low) / 2 : 0
  const banded = percent && { ...percent, plusMinus: half, standardUncertainty: half / 2, estimate: true }
  return idleVerdict(banded, window)
}

export function socketIdle(solved: SolvedSeat, circuit: AmpCircuit): SocketIdle {
  const { seat, idle, bands } = solved
  const { ratings, ratingsStandIn, asked } = seat.variant
  const strapped = circuit.stage.screenFeed.kind === 'triode-strapped'
  const ownScreen = seat.tube.parameters.kind === 'pentode' && !strapped
  const plateWatts = strapped ? bands.tubeDissipation : bands.plateDissipation
  const screenWatts = ownScreen ? bands.screenDissipation : null
  const plateRatingWatts = ratings?.plateWatts?.value ?? null
  const screenRatingWatts = ratings?.screenWatts?.value ?? null
  const platePercent = percentOf(plateWatts, plateRatingWatts)
  return {
    position: seat.socket.position,
    designation: asked,
    mark: seat.mark,
    isFitted: seat.isFitted,
    plateVolts: idle.plate,
    cathodeVolts: idle.cathode,
    plateToCathodeVolts: bands.plateToCathode,
    screenToCathodeVolts: ownScreen ? bands.screenToCathode : null,
    gridToCathodeVolts: bands.gridToCathode,
    plateAmps: strapped ? bands.cathodeCurrent : bands.plateCurrent,
    screenAmps: ownScreen ? bands.screenCurrent : null,
    cathodeAmps: bands.cathodeCurrent,
    plateWatts,
    plateRatingWatts,
    platePercent,
    screenWatts,
    screenRatingWatts,
    screenPercent: percentOf(screenWatts, screenRatingWatts),
    ratingSystem: ratings?.system ?? null,
    ratingsStandIn,
    verdict: verdictOf(platePercent, solved, circuit),
  }
}
