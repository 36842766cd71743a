/**
 * One tube of a set for another out of a stock that is laid out, the others staying as they are:
 * what each tube would make of the set, exactly, as every one is looked at. The best loses least
 * of what the choice of a whole set weighs: spread, aim, price, rarity, sureness and age
 * together. A tube becomes an object only once somebody asks about it.
 *
 *   least  x spread + y spread + sides + Σ cost  over the tubes that stay and the one that comes
 *
 * Ties go to the earlier marks, which are the earlier places. What is predicted is in the columns,
 * and what is carried over to one instrument was so before.
 */
import type { MatchLimits, SocketDemand } from '@/lib/domain/matching/candidate'
import type { Choice } from '@/lib/domain/matching/choose'
import { isTested } from '@/lib/domain/matching/eligibility'
import { type LineUp, lineUps, pointAt, type Running } from '@/lib/domain/matching/line-up'
import { type MatchWeights, USUAL_WEIGHTS } from '@/lib/domain/matching/match-weights'
import { isSaid } from '@/lib/domain/matching/predicted-columns'
import type { SetOption } from '@/lib/domain/matching/proposal'
import { found } from '@/lib/domain/matching/search/found'
import { balanceCost } from '@/lib/domain/matching/search/side-balance'
import { spreadCost } from '@/lib/domain/matching/search/spread-cost'
import { setOption } from '@/lib/domain/matching/set-option'
import { sift } from '@/lib/domain/matching/sift'
import { chargeOf, spreadScaleOf } from '@/lib/domain/matching/standing'
import { tubeAt } from '@/lib/domain/matching/stock-in-order'
import { placeCosts } from '@/lib/domain/matching/tube-costs'
import { weighedSides } from '@/lib/domain/matching/weighed-sides'
import { fail, ok, type Result } from '@/lib/domain/result'

/** Of tubes that stay, so that no set can be compared at all. */
export type ReplaceFault =
  | { readonly code: 'beside-not-tested'; readonly marks: readonly string[] }
  | { readonly code: 'beside-not-predicted'; readonly marks: readonly string[] }
  | { readonly code: 'beside-not-comparable'; readonly marks: readonly string[] }

/** By place in the stock. */
export type PlacesOfSet = {
  /** Those that stay. They are not asked whether they might be chosen anew. */
  readonly beside: readonly number[]
  /** Null: it is not known any more. */
  readonly out: number | null
}

export type PlacedReplacements = {
  /** Null: what goes out does not compare with those that stay. */
  readonly now: SetOption | null
  /** All that may stand there and compare, in the order of marks. */
  readonly places: Int32Array
  /** So many of `places` that `may` lets pass, least loss first. */
  readonly first: (most: number, may: (place: number) => boolean) => readonly number[]
  /** The set with it, its loss being against the set as it is. Null: it does not compare. */
  readonly setWith: (place: number) => SetOption | null
}

export function replaceFrom(
  running: Running,
  { beside, out }: PlacesOfSet,
  wanted: SocketDemand,
  given: MatchLimits,
): Result<PlacedReplacements, ReplaceFault> {
  const fault = faultOf(running, beside)
  if (fault) return fail(fault)
  const demand = { ...wanted, count: beside.length + 1 }
  const { predictions: _, ...plain } = given
  const limits = { ...plain, weights: given.weights ?? USUAL_WEIGHTS[demand.arrangement] }
  const leaving = out !== null && isSettled(running, out) ? [out] : []
  const { usable } = sift({ stock: running.stock, columns: running.predicted, demand, limits })
  const inTheRunning = withOwn(usable, { beside, leaving, out })
  const cohorts = lineUps(running, inTheRunning, demand.count, limits)
  const homes = cohorts.filter(({ members }) => beside.every((place) => members.includes(place)))
  if (homes.length === 0 && cohorts.length > 0)
    return fail({ code: 'beside-not-comparable', marks: marksOf(running, beside) })
  const inOrder = beside.toSorted((a, b) => a - b)
  return ok(answered({ running, homes, beside: inOrder, out, demand, limits }))
}

const marksOf = ({ stock }: Running, places: readonly number[]): string[] =>
  places.map((place) => stock.marks[place] as string)

function faultOf(running: Running, beside: readonly number[]): ReplaceFault | null {
  const untested = beside.filter((place) => !isTested(tubeAt(running.stock, place)))
  if (untested.length > 0) return { code: 'beside-not-tested', marks: marksOf(running, untested) }
  const unpredicted = beside.filter((place) => !isSettled(running, place))
  return unpredicted.length > 0 ? { code: 'beside-not-predicted', marks: marksOf(running, unpredicted) } : null
}

/** Tested and, where figures are predicted, predicted. */
const isSettled = ({ stock, predicted }: Running, place: number): boolean =>
  isTested(tubeAt(stock, place)) && (predicted === null || isSaid(predicted, place))

type OwnPlaces = PlacesOfSet & { readonly leaving: readonly number[] }

/** Rising. Those of the set are there whether they might be chosen anew or not. */
function withOwn(usable: Int32Array, { beside, leaving, out }: OwnPlaces): Int32Array {
  const others = usable.filter((place) => place !== out && !beside.includes(place))
  const all = new Int32Array(others.length + beside.length + leaving.length)
  all.set(others)
  all.set([...beside, ...leaving], others.length)
  return all.sort()
}

type Scene = PlacesOfSet & {
  readonly running: Running
  /** Cohorts that all who stay are in. */
  readonly homes: readonly LineUp[]
  readonly demand: SocketDemand
  readonly limits: MatchLimits & { readonly weights: MatchWeights }
}

function answered(scene: Scene): PlacedReplacements {
  const { running, homes, beside, out, demand } = scene
  const losses = lossesBy(scene)
  const optionWith = (place: number, now: SetOption | null) => {
    const cohort = beside.includes(place) ? undefined : homes.find(({ members }) => members.includes(place))
    return cohort ? setOption(choiceOf(running, cohort, [...beside, place]), demand, now) : null
  }
  const now = out === null ? null : optionWith(out, null)
  const places = joined(homes)
    .filter((place) => place !== out && !beside.includes(place))
    .sort()
  return {
    now,
    places,
    first: (most, may) => leastOf(places, losses, most, may),
    setWith: (place) => optionWith(place, now),
  }
}

function choiceOf(running: Running, cohort: LineUp, places: readonly number[]): Choice {
  const points = places.map((place) => pointAt(running, place))
  return { cohort, points, found: found(points) }
}

function joined(homes: readonly LineUp[]): Int32Array {
  const all = new Int32Array(homes.reduce((size, { members }) => size + members.length, 0))
  let to = 0
  for (const { members } of homes) {
    all.set(members, to)
    to += members.length
  }
  return all
}

/** By place, in points as the search for whole sets counts them; means nothing where a tube is in no home. */
function lossesBy({ running, homes, beside, demand, limits }: Scene): Float64Array {
  const { microamps, microsiemens } = running
  const { weights, yardsticks, asOf } = limits
  const yard = Math.round(yardsticks.plateCurrent * 1e6)
  const costs = placeCosts({ weights, demand, yard, running, places: homes.map(({ members }) => members), asOf })
  const sides = weighedSides({ weights, demand, yard })
  const currents = beside.map((place) => microamps[place] as number)
  const slopes = beside.map((place) => microsiemens[place] as number)
  const [lowestX, highestX, lowestY, highestY] = [...rangeOf(currents), ...rangeOf(slopes)]
  const losses = new Float64Array(microamps.length)
  for (const home of homes) {
    const scale = spreadScaleOf(home)
    const standing = beside.reduce((total, place) => total + (costs[place] as number), chargeOf(home))
    for (const place of home.members) {
      const [x, y] = [microamps[place] as number, microsiemens[place] as number]
      const range = Math.max(highestX, x) - Math.min(lowestX, x)
      const apart = spreadCost(scale, range, Math.min(lowestY, y), Math.max(highestY, y))
      const between = sides === null ? 0 : balanceCost(sides, [...currents, x])
      losses[place] = apart + between + standing + (costs[place] as number)
    }
  }
  return losses
}

const rangeOf = (values: readonly number[]): readonly [lowest: number, highest: number] => [
  Math.min(...values),
  Math.max(...values),
]

/** `places` rise, so of as many points the earlier stays before. */
function leastOf(
  places: Int32Array,
  losses: Float64Array,
  most: number,
  may: (place: number) => boolean,
): readonly number[] {
  const first: number[] = []
  const lossOf = (place: number | undefined) => losses[place ?? -1] ?? Number.POSITIVE_INFINITY
  for (const place of places) {
    if (first.length >= most && lossOf(place) >= lossOf(first[first.length - 1])) continue
    if (!may(place)) continue
    const at = first.findLastIndex((other) => lossOf(other) <= lossOf(place)) + 1
    first.splice(at, 0, place)
    if (first.length > most) first.pop()
  }
  return first
}
