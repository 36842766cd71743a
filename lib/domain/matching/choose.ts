/**
 * The exact choices over every cohort: the best set by the weights, the closest, and the
 * cheapest of those that match. Between cohorts the lower objective wins, then the earlier
 * marks.
 */
import { pointAt, type ScaledCohort } from './line-up'
import type { TubePoint } from './ranked-stock'
import { type BestSet, bestSet, type SetQuery } from './search/best-set'
import { type Found, found } from './search/found'
import { comparePlaces } from './search/incumbent'
import { SetsInTurn } from './search/sets-in-turn'
import type { SideBalance } from './search/side-balance'
import { POINTS_PER_YARDSTICK } from './search/spread-cost'
import { narrowed, reweighed, type Standing } from './standing'

export type Choice = {
  readonly cohort: ScaledCohort
  readonly points: readonly TubePoint[]
  readonly found: Found
}

export type Bounds = {
  readonly count: number
  readonly cap: number
  /** null: the sides of a set weigh nothing. */
  readonly sides: SideBalance | null
}

type Weighed = { readonly choice: Choice; readonly objective: number }

/** Two yardsticks of spread, and a point: any difference of price weighs more than the spreads within them. */
const PRICE_POINTS = 2 * POINTS_PER_YARDSTICK + 1

export function choose(standings: readonly Standing[], bounds: Bounds): Choice | null {
  return best(standings.map((each) => weighed(each, bestSet(each.index, queryOf(each, bounds)))))
}

/** The sets of each standing, one after another. */
export type Turn = { readonly standing: Standing; readonly sets: SetsInTurn }

export const turnsOf = (standings: readonly Standing[], bounds: Bounds): Turn[] =>
  standings.map((standing) => ({ standing, sets: new SetsInTurn(standing.index, queryOf(standing, bounds)) }))

export function chooseFirst(turns: readonly Turn[]): Choice | null {
  return best(turns.map(({ standing, sets }) => weighed(standing, sets.best())))
}

/** The next ones, no tube twice nor of those shown. */
export function chooseFurther(turns: readonly Turn[], shown: readonly Choice[], most: number): Choice[] {
  for (const turn of turns) for (const choice of shown) leaveOut(turn, choice)
  const each = turns.map((turn) => ({ turn, found: weighed(turn.standing, turn.sets.best()) }))
  const further: Choice[] = []
  for (;;) {
    const choice = best(each.map(({ found }) => found))
    if (!choice) break
    further.push(choice)
    if (further.length >= most) break
    for (const one of each) {
      if (one.turn.standing.cohort !== choice.cohort) continue
      leaveOut(one.turn, choice)
      one.found = weighed(one.turn.standing, one.turn.sets.best())
    }
  }
  return further
}

function leaveOut({ standing: { places }, sets }: Turn, { points }: Choice): void {
  const numbers = points.map(({ rank }) => [rank, lowerBound(places, rank)] as const)
  sets.leaveOut(numbers.filter(([rank, at]) => places[at] === rank).map(([, at]) => at))
}

/**
 * Sets with measured transconductance go before those matched by current alone. Price alone
 * decides, then the spreads; the sides are left out, or a dearer set could go before.
 */
export function chooseLeastPrice(standings: readonly Standing[], bounds: Bounds): Choice | null {
  const bare = { ...bounds, sides: null }
  const priced = (each: readonly Standing[]) => best(each.map((standing) => leastPriced(standing, bare)))
  return (
    priced(standings.filter(({ cohort }) => cohort.measured)) ??
    priced(standings.filter(({ cohort }) => !cohort.measured))
  )
}

/** The cheapest few of a long stock. */
const FEW = 2000

/** A set among the cheapest few bounds what any tube of a cheaper set can cost: the others need not be looked at. */
function leastPriced(standing: Standing, bounds: Bounds): Weighed | null {
  const { running, places } = standing
  const { price, byPrice } = running.stock
  const even = { scale: { ...standing.cohort.scale, currentWeight: 1000, weight: 1000 } }
  const costs = new Float64Array(price.length)
  for (let place = 0; place < costs.length; place += 1) costs[place] = (price[place] as number) * PRICE_POINTS
  const among = (some: Int32Array) => {
    const each = reweighed(narrowed(standing, some, costs), costs, even)
    const { xYard, yYard } = each.scale
    return weighed(each, bestSet(each.index, { ...queryOf(each, bounds), xLimit: xYard, yLimit: yYard }))
  }
  if (places.length <= 2 * FEW) return among(places)
  const cheapest = firstOf(byPrice, places, FEW)
  const first = among(cheapest.toSorted())
  if (!first) return among(places)
  const others = cheapest.subarray(0, bounds.count - 1).reduce((sum, place) => sum + (price[place] as number), 0)
  const dearest = first.choice.found.price - others
  return among(places.filter((place) => (price[place] as number) <= dearest))
}

/** The first so many of an order that are among those places. */
function firstOf(order: Int32Array, places: Int32Array, most: number): Int32Array {
  const isThere = new Uint8Array(order.length)
  for (const place of places) isThere[place] = 1
  const first = new Int32Array(most)
  let count = 0
  for (let at = 0; at < order.length && count < most; at += 1) {
    if (isThere[order[at] as number] === 1) first[count++] = order[at] as number
  }
  return first.subarray(0, count)
}

const queryOf = ({ scale }: Standing, { count, cap, sides }: Bounds): SetQuery => ({
  ...{ count, scale, priceCap: cap },
  ...(sides ? { balance: sides } : {}),
})

function weighed({ cohort, running, places, charge }: Standing, set: BestSet | null): Weighed | null {
  if (!set) return null
  const chosen = set.places.map((number) => pointAt(running, places[number] as number))
  return { choice: { cohort, points: chosen, found: found(chosen) }, objective: set.objective + charge }
}

function lowerBound(rising: Int32Array, wanted: number): number {
  let [low, high] = [0, rising.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((rising[middle] as number) < wanted) low = middle + 1
    else high = middle
  }
  return low
}

function best(all: readonly (Weighed | null)[]): Choice | null {
  const marks = ({ choice }: Weighed) => choice.points.map(({ markRank }) => markRank)
  const sorted = all
    .filter((each) => each !== null)
    .sort((a, b) => a.objective - b.objective || comparePlaces(marks(a), marks(b)))
  return sorted[0]?.choice ?? null
}
