/**
 * What choosing each tube costs beside the spread of its set, in points (a million is one
 * yardstick); the parts and their units are those of MatchWeights, each divided by the number
 * of tubes in the set, so that the set costs their mean.
 */
import type { SocketDemand, TubeTest } from './candidate'
import { ageDays } from './eligibility'
import type { MatchWeights } from './match-weights'
import type { TubePoint } from './ranked-stock'
import { POINTS_PER_YARDSTICK } from './search/spread-cost'

type Costing = {
  readonly weights: MatchWeights
  readonly demand: Pick<SocketDemand, 'count' | 'aim'>
  /** Microamps in one yardstick. */
  readonly yard: number
  /** Of all tubes in the running, this cohort or not. */
  readonly running: readonly TubePoint[]
  readonly asOf: string
}

const DAYS_PER_YEAR = 365

export function tubeCosts({ weights, demand, yard, running, asOf }: Costing): (point: TubePoint) => number {
  const { count, aim } = demand
  const usual = Math.max(1, median(running.map(({ price }) => price)))
  const ofVariant = counted(running.map(({ tube }) => tube.designation))
  const target = aim === null ? null : Math.round(aim * 1e6)
  const yearsOf = yearsBefore(asOf)
  return ({ tube, microamps, price, predicted }) => {
    const off = predicted && target !== null ? Math.abs(microamps - target) / yard : 0
    const half = predicted ? (1e6 * (predicted.plateCurrent.high - predicted.plateCurrent.low)) / 2 / yard : 0
    const taken = Math.min(1, count / (ofVariant.get(tube.designation) ?? 1))
    const years = yearsOf(tube.test)
    const yardsticks =
      weights.aim * off +
      weights.price * (price / usual) +
      weights.rarity * taken +
      weights.confidence * half +
      weights.age * years
    return Math.round((POINTS_PER_YARDSTICK * yardsticks) / count)
  }
}

/** A long stock was tested on few days: each is read once. */
function yearsBefore(asOf: string): (test: TubeTest) => number {
  const known = new Map<string, number>()
  return (test) => {
    const day = test.testedAt.slice(0, 10)
    const years = known.get(day) ?? Math.max(0, ageDays(test, asOf)) / DAYS_PER_YEAR
    known.set(day, years)
    return years
  }
}

function median(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort()
  return sorted[Math.floor(sorted.length / 2)] ?? 0
}

function counted(names: readonly string[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>()
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1)
  return counts
}
