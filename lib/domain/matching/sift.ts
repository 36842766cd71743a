/**
 * Which tubes of a stock may stand in these sockets, and why the others may not.
 *
 * `exclusionReasons` decides. For a long stock it is asked once for each kind of tube, with
 * the figures that differ within a kind out of the way; these are then held against their own
 * limits tube by tube. What does not pass that way is asked about in full, so the short way
 * can only ever say yes.
 */
import { money } from '../money'
import { ok, type Result } from '../result'
import { amps, siemens } from '../units'
import type { Candidate, MatchLimits, SocketDemand } from './candidate'
import { above, exclusionReasons, isTested } from './eligibility'
import { isUntrimmed } from './match-weights'
import { answerAt, isSaid, type PredictedColumns } from './predicted-columns'
import type { PredictedTube, Predictions } from './predicted-tube'
import type { Exclusion } from './proposal'
import { dayNumber, type StockInOrder, tubeAt, UNDATED } from './stock-in-order'

export type Sifted = {
  /** Places, rising. */
  readonly usable: Int32Array
  readonly excluded: readonly Exclusion[]
}

type Sieve = {
  readonly stock: StockInOrder
  readonly columns: PredictedColumns | null
  readonly demand: SocketDemand
  /** Its predictions are left to `columns`. */
  readonly limits: MatchLimits
}

export function sift(sieve: Sieve): Sifted {
  const { stock, columns, demand, limits } = sieve
  const passes = shortWay(sieve)
  const usable = new Int32Array(stock.marks.length)
  const excluded: Exclusion[] = []
  let count = 0
  for (let place = 0; place < stock.marks.length; place += 1) {
    if (passes(place)) {
      usable[count++] = place
      continue
    }
    const candidate = tubeAt(stock, place)
    const predictions = columns && predictionOf(candidate, answerAt(columns, place, candidate.tubeId))
    const reasons = exclusionReasons(candidate, demand, { ...limits, ...(predictions ? { predictions } : {}) })
    if (reasons.length === 0 && isTested(candidate)) usable[count++] = place
    else excluded.push({ candidate, reasons })
  }
  return { usable: usable.subarray(0, count), excluded }
}

/** True only of a tube that `exclusionReasons` has nothing against. */
function shortWay({ stock, columns, demand, limits }: Sieve): (place: number) => boolean {
  const { kindOf, microamps, price } = stock
  const taken = new Uint8Array(price.length)
  for (const place of stock.states.keys()) taken[place] = 1
  const kindPasses = Uint8Array.from(stock.kinds, (kind) => (passesBut(kind, demand, limits, columns !== null) ? 1 : 0))
  const ofAge = ageCheck(stock, limits)
  const hasSlope = slopeCheck(stock)
  const isPredicted = predictionCheck(stock, columns, demand)
  const cap = limits.priceCap ?? Number.POSITIVE_INFINITY
  return (place) =>
    taken[place] === 0 &&
    kindPasses[kindOf[place] as number] === 1 &&
    (microamps[place] as number) > 0 &&
    (price[place] as number) <= cap &&
    ofAge(place) &&
    hasSlope(place) &&
    isPredicted(place)
}

/** Of a kind, with everything in order that differs within it. */
function passesBut(kind: Candidate, demand: SocketDemand, limits: MatchLimits, predicted: boolean): boolean {
  if (!kind.test) return false
  const transconductance = kind.test.transconductance === null ? null : siemens(1)
  const test = { ...kind.test, testedAt: limits.asOf, plateCurrent: amps(1), transconductance }
  const tube = { ...kind, state: { kind: 'free' }, price: money(0), test } as const
  const predictions = predicted ? { predictions: predictionOf(kind, ok(COLD)) } : {}
  return exclusionReasons(tube, demand, { ...limits, priceCap: null, ...predictions }).length === 0
}

type Answer = Result<PredictedTube, string>

const NOTHING = { value: 0, low: 0, high: 0 }
const COLD: PredictedTube = {
  plateCurrent: NOTHING,
  byReadings: amps(0),
  transconductance: NOTHING,
  plateDissipation: NOTHING,
  extrapolated: false,
}

const predictionOf = ({ tubeId }: Candidate, answer: Answer | undefined): Predictions => ({
  readOn: '',
  ofTube: new Map(answer ? [[tubeId, answer]] : []),
})

function ageCheck({ testDay }: StockInOrder, { asOf, maximumTestAgeDays }: MatchLimits): (place: number) => boolean {
  const today = dayNumber(asOf)
  if (today === UNDATED) return () => false
  // One day ahead is a matter of time zones: exclusionReasons says so too.
  const latest = today + 1
  const earliest = maximumTestAgeDays === null ? UNDATED + 1 : today - maximumTestAgeDays
  return (place) => (testDay[place] as number) >= earliest && (testDay[place] as number) <= latest
}

function slopeCheck({ kinds, kindOf, microsiemens }: StockInOrder): (place: number) => boolean {
  const unread = Uint8Array.from(kinds, ({ test }) => (test?.transconductance === null ? 1 : 0))
  return (place) => (microsiemens[place] as number) > 0 || unread[kindOf[place] as number] === 1
}

function predictionCheck(
  { kinds, kindOf }: StockInOrder,
  columns: PredictedColumns | null,
  { arrangement }: SocketDemand,
): (place: number) => boolean {
  if (!columns) return () => true
  if (!isUntrimmed(arrangement)) return (place) => isSaid(columns, place)
  const ratings = kinds.map(({ ratings }) => ratings.maxPlateDissipation ?? Number.POSITIVE_INFINITY)
  return (place) =>
    isSaid(columns, place) && !above(columns.power[place] as number, ratings[kindOf[place] as number] as number)
}
