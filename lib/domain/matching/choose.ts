/**
 * The exact choices over every cohort: the best set by the weights, the closest, and the
 * cheapest of those that match. Between cohorts the lower objective wins, then the earlier
 * marks.
 */
import type { RankedCohort, TubePoint } from './ranked-stock'
import { bestSet, type SetQuery } from './search/best-set'
import { type Found, found } from './search/found'
import { comparePlaces } from './search/incumbent'
import { POINTS_PER_YARDSTICK } from './search/spread-cost'
import { type Standing, standing } from './standing'

export type Choice = {
  readonly cohort: RankedCohort
  readonly points: readonly TubePoint[]
  readonly found: Found
}

export type Bounds = { readonly count: number; readonly cap: number }

type Weighed = { readonly choice: Choice; readonly objective: number }

/** Two yardsticks of spread, and a point: any difference of price weighs more than the spreads within them. */
const PRICE_POINTS = 2 * POINTS_PER_YARDSTICK + 1

export function choose(standings: readonly Standing[], bounds: Bounds): Choice | null {
  return best(standings.map((each) => weighed(each, bounds, new Set())))
}

/** The next ones, no tube twice nor of those shown. */
export function chooseFurther(
  standings: readonly Standing[],
  bounds: Bounds,
  shown: readonly Choice[],
  most: number,
): Choice[] {
  const used = new Set(shown.flatMap(({ points }) => points.map(({ rank }) => rank)))
  const each = standings.map((standing) => ({ standing, found: weighed(standing, bounds, used) }))
  const further: Choice[] = []
  while (further.length < most) {
    const choice = best(each.map(({ found }) => found))
    if (!choice) break
    further.push(choice)
    for (const { rank } of choice.points) used.add(rank)
    for (const one of each) {
      if (one.standing.cohort === choice.cohort) one.found = weighed(one.standing, bounds, used)
    }
  }
  return further
}

/** Sets with measured transconductance go before those matched by current alone. */
export function chooseLeastPrice(cohorts: readonly RankedCohort[], bounds: Bounds): Choice | null {
  const priced = (each: readonly RankedCohort[]) =>
    best(each.map((cohort) => weighed(pricedStanding(cohort), bounds, new Set(), true)))
  return priced(cohorts.filter(({ measured }) => measured)) ?? priced(cohorts.filter(({ measured }) => !measured))
}

function pricedStanding(cohort: RankedCohort): Standing {
  const even = { ...cohort, scale: { ...cohort.scale, currentWeight: 1000, weight: 1000 } }
  return { ...standing(even, ({ price }) => price * PRICE_POINTS), cohort }
}

function weighed(
  { cohort, points, index, scale, charge }: Standing,
  { count, cap }: Bounds,
  used: ReadonlySet<number>,
  withinYardsticks = false,
): Weighed | null {
  const query: SetQuery = {
    count,
    scale,
    priceCap: cap,
    excluded: Uint8Array.from(points, ({ rank }) => (used.has(rank) ? 1 : 0)),
    ...(withinYardsticks ? { xLimit: scale.xYard, yLimit: scale.yYard } : {}),
  }
  const set = bestSet(index, query)
  if (!set) return null
  const chosen = set.places.map((place) => points[place] as TubePoint)
  return { choice: { cohort, points: chosen, found: found(chosen) }, objective: set.objective + charge }
}

function best(all: readonly (Weighed | null)[]): Choice | null {
  const marks = ({ choice }: Weighed) => choice.points.map(({ markRank }) => markRank)
  const sorted = all
    .filter((each) => each !== null)
    .sort((a, b) => a.objective - b.objective || comparePlaces(marks(a), marks(b)))
  return sorted[0]?.choice ?? null
}
