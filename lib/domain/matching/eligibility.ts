/**
 * Whether one tube may stand in these sockets, and if not, every reason with
 * its figures. A tube of another family gets that reason alone.
 *
 * Voltages are held against the printed rating of the tube's own variant. That
 * a good old bottle often stands more in a guitar amplifier is common practice,
 * no source; so the shop may turn these two into cautions. The dissipation
 * limit is never softened. All bounds are inclusive: at the rating is within it.
 */
import { type Day, daysBetween, readDay } from '../calendar'
import { type Volts, watts } from '../units'
import type { Candidate, MatchLimits, SocketDemand, TubeTest } from './candidate'
import { isUntrimmed } from './match-weights'
import { predictedTube } from './predicted-tube'
import type { ExclusionReason, TestedCandidate, TubeCaution } from './proposal'

/** Millivolts and milliwatts, so that a binary fraction never puts a value over its bound. */
export const above = (value: number, bound: number): boolean => Math.round(value * 1000) > Math.round(bound * 1000)

export const microamps = (test: TubeTest): number => Math.round(test.plateCurrent * 1e6)
export const microsiemens = (test: TubeTest): number | null =>
  test.transconductance === null ? null : Math.round(test.transconductance * 1e6)

export function dayOf(iso: string): Day {
  const day = readDay(iso.slice(0, 10))
  if (!day) throw new Error(`A date must begin with YYYY-MM-DD, got "${iso}"`)
  return day
}

/** A long stock was tested on few days: each is read once. */
const dayNumbers = new Map<string, number>()
const MOST_DAYS = 5000
const EPOCH = dayOf('1970-01-01')

function dayNumberOf(iso: string): number {
  const known = dayNumbers.get(iso)
  if (known !== undefined) return known
  const number = daysBetween(EPOCH, dayOf(iso))
  if (dayNumbers.size >= MOST_DAYS) dayNumbers.clear()
  dayNumbers.set(iso, number)
  return number
}

export const ageDays = (test: TubeTest, asOf: string): number => dayNumberOf(asOf) - dayNumberOf(test.testedAt)

export function isTested(candidate: Candidate): candidate is TestedCandidate {
  return candidate.test !== null
}

export function exclusionReasons(tube: Candidate, demand: SocketDemand, limits: MatchLimits): ExclusionReason[] {
  if (tube.family !== demand.family) return [{ code: 'wrong-type', family: tube.family, wanted: demand.family }]
  const reasons: ExclusionReason[] = []
  if (tube.base !== demand.base) reasons.push({ code: 'wrong-base', base: tube.base, wanted: demand.base })
  reasons.push(...stateReasons(tube), ...testReasons(tube.test, limits))
  if (!limits.allowOverPrintedRating) reasons.push(...voltagesOverRating(tube, demand))
  reasons.push(...dissipationReasons(tube, demand, limits))
  if (reasons.length === 0) reasons.push(...predictionReasons(tube, limits))
  const cap = limits.priceCap
  if (cap !== null && tube.price > cap) reasons.push({ code: 'over-price-cap', price: tube.price, cap })
  return reasons
}

export function tubeCautions(tube: Candidate, demand: SocketDemand): TubeCaution[] {
  const cautions: TubeCaution[] = [...voltagesOverRating(tube, demand)]
  const { designation, ratings } = tube
  const unknown = [
    { of: 'plate-voltage', asked: demand.plateToCathodeVoltage, rating: ratings.maxPlateVoltage },
    { of: 'screen-voltage', asked: demand.screenVoltage, rating: ratings.maxScreenVoltage },
    { of: 'plate-dissipation', asked: demand.idlePlateDissipation, rating: ratings.maxPlateDissipation },
  ] as const
  for (const { of, asked, rating } of unknown) {
    if (asked !== null && rating === null) cautions.push({ code: 'rating-not-known', designation, of })
  }
  if (ratings.standsIn !== undefined)
    cautions.push({ code: 'rating-stands-in', designation, printed: ratings.standsIn })
  if (tube.test?.leakageNote) cautions.push({ code: 'leakage-noted', note: tube.test.leakageNote })
  return cautions
}

function stateReasons({ state, condition }: Candidate): ExclusionReason[] {
  const reasons: ExclusionReason[] = []
  if (state.kind === 'reserved') reasons.push({ code: 'reserved', holder: state.holder })
  if (state.kind === 'fitted') reasons.push({ code: 'fitted', place: state.place })
  if (state.kind === 'gone') reasons.push({ code: 'gone', cause: state.cause })
  if (condition === 'reject') reasons.push({ code: 'condition-reject' })
  return reasons
}

function testReasons(test: TubeTest | null, limits: MatchLimits): ExclusionReason[] {
  if (test === null) return [{ code: 'untested' }]
  const { testedAt, plateCurrent, transconductance } = test
  const reasons: ExclusionReason[] = []
  if (test.shorts) reasons.push({ code: 'shorted', testedAt })
  const slope = microsiemens(test)
  if (microamps(test) <= 0 || (slope !== null && slope <= 0)) {
    reasons.push({ code: 'dead', plateCurrent, transconductance })
  }
  const age = ageDays(test, limits.asOf)
  const maximumDays = limits.maximumTestAgeDays
  // One day ahead is a matter of time zones, not of a wrong date.
  if (age < -1) reasons.push({ code: 'test-in-future', testedAt, asOf: limits.asOf })
  if (maximumDays !== null && age > maximumDays) {
    reasons.push({ code: 'test-too-old', testedAt, ageDays: age, maximumDays })
  }
  return reasons
}

type OverRating = Extract<ExclusionReason, { code: 'plate-voltage-over-rating' | 'screen-voltage-over-rating' }>

function voltagesOverRating({ designation, ratings }: Candidate, demand: SocketDemand): OverRating[] {
  const over = (code: OverRating['code'], voltage: Volts | null, rating: Volts | null): OverRating[] =>
    voltage !== null && rating !== null && above(voltage, rating) ? [{ code, designation, voltage, rating }] : []
  return [
    ...over('plate-voltage-over-rating', demand.plateToCathodeVoltage, ratings.maxPlateVoltage),
    ...over('screen-voltage-over-rating', demand.screenVoltage, ratings.maxScreenVoltage),
  ]
}

/** Where nothing trims the idle, what the tube itself would dissipate is held against its rating. */
function dissipationReasons(tube: Candidate, demand: SocketDemand, { predictions }: MatchLimits): ExclusionReason[] {
  const { designation } = tube
  const rating = tube.ratings.maxPlateDissipation
  const own = isUntrimmed(demand.arrangement) ? predictedTube(predictions, tube.tubeId) : null
  const dissipation = own ? watts(own.plateDissipation.value) : demand.idlePlateDissipation
  if (dissipation === null || rating === null || !above(dissipation, rating)) return []
  return [{ code: own ? 'predicted-over-dissipation' : 'idle-over-dissipation', designation, dissipation, rating }]
}

function predictionReasons({ tubeId }: Candidate, { predictions }: MatchLimits): ExclusionReason[] {
  if (!predictions) return []
  const found = predictions.ofTube.get(tubeId)
  if (found?.ok) return []
  return [{ code: 'cannot-say', why: found ? found.fault : 'Its test does not tell its strength.' }]
}
