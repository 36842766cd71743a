/**
 * The exact choices over every cohort: the closest set, and the closest of the
 * cheapest sets that match.
 */
import type { RankedCohort, TubePoint } from './ranked-stock'
import { closestSet } from './search/closest-set'
import { compareFound, type Found } from './search/found'
import { leastPrice } from './search/least-price'

export type Choice = {
  readonly cohort: RankedCohort
  readonly points: readonly TubePoint[]
  readonly found: Found
}

type Limits = { readonly count: number; readonly cap: number }

export function chooseClosest(cohorts: readonly RankedCohort[], { count, cap }: Limits): Choice | null {
  const each = cohorts.flatMap((cohort) => {
    const { points, scale } = cohort
    return choice(cohort, closestSet({ points, count, scale, cap, withinYardsticks: false }))
  })
  return first(each, (a, b) => compareFound(a.found, a.cohort.scale, b.found, b.cohort.scale))
}

/** Sets with measured transconductance go before those matched by current alone. */
export function chooseLeastPrice(cohorts: readonly RankedCohort[], limits: Limits): Choice | null {
  const measured = cohorts.filter((cohort) => cohort.measured)
  const current = cohorts.filter((cohort) => !cohort.measured)
  return cheapestOf(measured, limits) ?? cheapestOf(current, limits)
}

function cheapestOf(cohorts: readonly RankedCohort[], { count, cap }: Limits): Choice | null {
  const each = cohorts.flatMap((cohort) => {
    const { points, scale } = cohort
    const price = leastPrice({ points, count, scale })
    // No set within the yardsticks is cheaper, so this cap leaves only those at that very price.
    if (price > cap || price === Number.POSITIVE_INFINITY) return []
    return choice(cohort, closestSet({ points, count, scale, cap: price, withinYardsticks: true }))
  })
  return first(
    each,
    (a, b) => a.found.price - b.found.price || compareFound(a.found, a.cohort.scale, b.found, b.cohort.scale),
  )
}

function choice(cohort: RankedCohort, found: Found | null): Choice[] {
  if (!found) return []
  const byRank = new Map(cohort.points.map((point) => [point.rank, point]))
  const points = found.points.map((point) => byRank.get(point.rank) as TubePoint)
  return [{ cohort, found, points }]
}

function first(choices: readonly Choice[], order: (a: Choice, b: Choice) => number): Choice | null {
  return [...choices].sort(order)[0] ?? null
}
