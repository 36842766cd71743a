/**
 * The margins of the set called safe working: every limit kept with room to spare, and no
 * figure that rests on a guess. Where the idle is predicted, the upper end of its band keeps
 * the rating. All are shop rules, no source; bounds are inclusive.
 */
import type { Candidate, SocketDemand, TubeRatings } from './candidate'
import { ageDays } from './eligibility'
import type { Running } from './line-up'
import { MARGIN_CODES, type MarginCode } from './margin-code'
import { columnOf, isSaid, type PredictedColumns, STANDS } from './predicted-columns'
import type { PredictedTube } from './predicted-tube'
import type { TubePoint } from './ranked-stock'
import { dayNumber, type StockInOrder } from './stock-in-order'

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
export function marginsBroken(
  { tube, predicted }: Pick<TubePoint, 'tube' | 'predicted'>,
  { demand, asOf }: Judging,
): MarginCode[] {
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
    'band-wide': predicted !== null && bandIsWide(predicted),
    'condition-not-sure': condition === 'as-found' || condition === 'pull',
    'socket-not-measured':
      voltsNotMeasured(ratings, demand) ||
      (predicted === null && rating !== null && demand.idlePlateDissipation === null),
  }
  return MARGIN_CODES.filter((code) => broken[code])
}

/** A rating that nothing was held against. */
const voltsNotMeasured = ({ maxPlateVoltage, maxScreenVoltage }: TubeRatings, demand: SocketDemand): boolean =>
  (maxPlateVoltage !== null && demand.plateToCathodeVoltage === null) ||
  (maxScreenVoltage !== null && demand.screenVoltage === null)

type Judged = Judging & { readonly running: Running }

/** Which margins the tube at each place breaks, a bit for each of MARGIN_CODES: the same as above for a long stock. */
export function marginsByPlace({ running, demand, asOf }: Judged): Uint16Array {
  const { stock, predicted } = running
  const { kindOf, kinds, testDay } = stock
  const oldest = dayNumber(asOf) - SAFE_MARGINS.testAgeDays
  const ofKind = Int32Array.from(kinds, (kind) => bitsOf(kindMargins(kind, { demand, asOf })))
  const margins = new Uint16Array(kindOf.length)
  for (let place = 0; place < margins.length; place += 1) {
    const old = (testDay[place] as number) < oldest ? OLD : 0
    margins[place] = (ofKind[kindOf[place] as number] as number) | old
  }
  if (predicted) judgePredicted(margins, { stock, predicted, demand })
  return margins
}

type Predicted = { readonly stock: StockInOrder; readonly predicted: PredictedColumns; readonly demand: SocketDemand }

function judgePredicted(margins: Uint16Array, { stock: { kinds, kindOf }, predicted, demand }: Predicted): void {
  const { stands, rowOf } = predicted
  const [current, powerHigh] = [columnOf(predicted, 'current'), columnOf(predicted, 'powerHigh')]
  const [currentLow, currentHigh] = [columnOf(predicted, 'currentLow'), columnOf(predicted, 'currentHigh')]
  // Of what is predicted the dissipation is known.
  const unmeasured = Int32Array.from(kinds, ({ ratings }) => (voltsNotMeasured(ratings, demand) ? UNMEASURED : 0))
  const ratings = Float64Array.from(kinds, ({ ratings }) => milli(ratings.maxPlateDissipation ?? Infinity))
  for (let place = 0; place < margins.length; place += 1) {
    if (!isSaid(predicted, place)) continue
    const row = rowOf[place] as number
    const hot = milli(powerHigh[row] as number) > (ratings[kindOf[place] as number] as number) ? HOT : 0
    const [value, low, high] = [current[row] as number, currentLow[row] as number, currentHigh[row] as number]
    const wide = isWide(value, low, high, stands[place] === STANDS.extrapolated) ? WIDE : 0
    const open = unmeasured[kindOf[place] as number] as number
    margins[place] = ((margins[place] as number) & ~(HOT | UNMEASURED)) | hot | wide | open
  }
}

export const marginsIn = (bits: number): MarginCode[] => MARGIN_CODES.filter((code) => (bits & bitOf(code)) !== 0)

const bitOf = (code: MarginCode): number => 1 << MARGIN_CODES.indexOf(code)
const bitsOf = (codes: readonly MarginCode[]): number => codes.reduce((bits, code) => bits | bitOf(code), 0)
const [OLD, HOT, WIDE] = [bitOf('test-not-fresh'), bitOf('dissipation-near-rating'), bitOf('band-wide')]
const UNMEASURED = bitOf('socket-not-measured')

/** Not predicted, and tested today. */
function kindMargins(tube: Candidate, judging: Judging): MarginCode[] {
  const { test } = tube
  if (!test) return []
  return marginsBroken({ tube: { ...tube, test: { ...test, testedAt: judging.asOf } }, predicted: null }, judging)
}

const isWide = (value: number, low: number, high: number, extrapolated: boolean): boolean =>
  extrapolated || (high - low) / 2 > SAFE_MARGINS.bandShare * value

const bandIsWide = ({ plateCurrent: { value, low, high }, extrapolated }: PredictedTube): boolean =>
  isWide(value, low, high, extrapolated)

/** Thousandths, so that a binary fraction never puts a value over its bound. */
const milli = (value: number): number => Math.round(value * 1000)

const nearer = (asked: number | null, rating: number | null, share: number): boolean =>
  asked !== null && rating !== null && milli(asked) > milli(share * rating)
