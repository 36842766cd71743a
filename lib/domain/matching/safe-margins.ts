/**
 * The margins of the set called safe working: every limit kept with room to spare, and no
 * figure that rests on a guess. Where the idle is predicted, the upper end of its band keeps
 * the rating. All are shop rules, no source; bounds are inclusive.
 */
import type { SocketDemand } from './candidate'
import { ageDays } from './eligibility'
import { MARGIN_CODES, type MarginCode } from './margin-code'
import type { PredictedTube } from './predicted-tube'
import type { TubePoint } from './ranked-stock'

export const SAFE_MARGINS = {
  /** Of the printed rating. */
  voltageShare: 0.9,
  dissipationShare: 0.9,
  /** Half of the 95 % band of a predicted current, of its value. */
  bandShare: 0.25,
  testAgeDays: 183,
} as const

type Judging = { readonly demand: SocketDemand; readonly asOf: string }

/** Empty: it keeps them all. */
export function marginsBroken({ tube, predicted }: TubePoint, { demand, asOf }: Judging): MarginCode[] {
  const { ratings, test, condition } = tube
  const volts = [
    [demand.plateToCathodeVoltage, ratings.maxPlateVoltage],
    [demand.screenVoltage, ratings.maxScreenVoltage],
  ] as const
  const unsure = volts.some(([asked, rating]) => asked !== null && rating === null) || ratings.standsIn !== undefined
  const rating = ratings.maxPlateDissipation
  const broken: Readonly<Record<MarginCode, boolean>> = {
    'voltage-near-rating': volts.some(([asked, rating]) => nearer(asked, rating, SAFE_MARGINS.voltageShare)),
    'rating-not-sure': unsure || rating === null,
    'dissipation-near-rating': predicted
      ? nearer(predicted.plateDissipation.high, rating, 1)
      : nearer(demand.idlePlateDissipation, rating, SAFE_MARGINS.dissipationShare),
    'test-not-fresh': ageDays(test, asOf) > SAFE_MARGINS.testAgeDays,
    'test-noted-fault': test.leakageNote !== null,
    'slope-not-measured': test.transconductance === null,
    'band-wide': predicted !== null && isWide(predicted),
    'condition-not-sure': condition === 'as-found' || condition === 'pull',
  }
  return MARGIN_CODES.filter((code) => broken[code])
}

const isWide = ({ plateCurrent: { value, low, high }, extrapolated }: PredictedTube): boolean =>
  extrapolated || (high - low) / 2 > SAFE_MARGINS.bandShare * value

/** Thousandths, so that a binary fraction never puts a value over its bound. */
const nearer = (asked: number | null, rating: number | null, share: number): boolean =>
  asked !== null && rating !== null && Math.round(asked * 1000) > Math.round(share * rating * 1000)
