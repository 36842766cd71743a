/**
 * The tubes in the running, numbered for the search: by price then mark, and
 * by mark alone, over all cohorts, so that sets from different cohorts compare.
 */
import type { MatchLimits } from './candidate'
import { type Cohort, type CohortFacts, cohorts, predictedCohorts } from './cohort'
import { microamps, microsiemens } from './eligibility'
import { TRANSCONDUCTANCE_WEIGHT, UNMEASURED_CHARGE } from './match-limits'
import { naturalOrder } from './natural-order'
import { type PredictedTube, predictedTube } from './predicted-tube'
import type { TestedCandidate } from './proposal'
import type { Point } from './search/point'
import type { Scale } from './search/score'

/** `predicted`: null where it is compared by its reading. */
export type TubePoint = Point & { readonly tube: TestedCandidate; readonly predicted: PredictedTube | null }

export type RankedCohort = Cohort & { readonly points: readonly TubePoint[]; readonly scale: Scale }

export function byMark(a: TestedCandidate, b: TestedCandidate): number {
  return naturalOrder(a.mark, b.mark) || naturalOrder(a.tubeId, b.tubeId)
}

export function rankedCohorts(tubes: readonly TestedCandidate[], count: number, limits: MatchLimits): RankedCohort[] {
  const marked = [...tubes].sort(byMark)
  const priced = [...marked].sort((a, b) => a.price - b.price)
  const markRank = new Map(marked.map((tube, place) => [tube.tubeId, place]))
  const rank = new Map(priced.map((tube, place) => [tube.tubeId, place]))
  const placeOf = (places: ReadonlyMap<string, number>, tube: TestedCandidate) => places.get(tube.tubeId) as number
  const group = limits.predictions ? predictedCohorts : cohorts
  // Members in order of mark make the outcome independent of the order given.
  return group(marked, limits.oneDesignation).map((cohort) => ({
    ...cohort,
    scale: scaleFor(cohort, count, limits),
    points: cohort.members.map((tube) => ({
      tube,
      rank: placeOf(rank, tube),
      markRank: placeOf(markRank, tube),
      price: tube.price,
      ...figures(tube, predictedTube(limits.predictions, tube.tubeId)),
    })),
  }))
}

function figures({ test }: TestedCandidate, predicted: PredictedTube | null) {
  if (predicted === null) return { predicted, microamps: microamps(test), microsiemens: microsiemens(test) ?? 1 }
  return {
    predicted,
    microamps: Math.round(1e6 * predicted.plateCurrent.value),
    microsiemens: Math.max(1, Math.round(1e6 * predicted.transconductance.value)),
  }
}

export function scaleFor(
  cohort: Pick<CohortFacts, 'measured'>,
  count: number,
  { yardsticks, weights }: MatchLimits,
): Scale {
  return {
    microamps: Math.round(yardsticks.plateCurrent * 1e6),
    millionths: Math.round(yardsticks.transconductance * 1e6),
    currentWeight: Math.round((weights?.currentSpread ?? 1) * 1000),
    weight: Math.round((weights?.slopeSpread ?? TRANSCONDUCTANCE_WEIGHT) * 1000),
    // A single tube has nothing to differ from.
    charge: cohort.measured || count === 1 ? 0 : UNMEASURED_CHARGE,
  }
}
