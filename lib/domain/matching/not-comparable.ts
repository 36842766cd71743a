/**
 * Good tubes that could not stand beside those of the best set, and in
 * which way their tests differ.
 */
import type { Choice } from './choose'
import { instrumentKey, samePoint } from './cohort'
import type { Exclusion, ExclusionReason, TestedCandidate } from './proposal'
import type { RankedCohort } from './ranked-stock'

export function notComparable(cohorts: readonly RankedCohort[], best: Choice, shown: readonly Choice[]): Exclusion[] {
  const used = new Set(shown.flatMap((choice) => choice.points.map((point) => point.rank)))
  return cohorts
    .filter((cohort) => cohort !== best.cohort)
    .flatMap((cohort) =>
      cohort.points
        .filter((point) => !used.has(point.rank))
        .map(({ tube }) => ({ candidate: tube, reasons: differences(tube, cohort, best.cohort) })),
    )
}

function differences(tube: TestedCandidate, mine: RankedCohort, its: RankedCohort): ExclusionReason[] {
  const { testPoint, instrument } = tube.test
  const reasons: ExclusionReason[] = []
  if (mine.predicted) return differentDesignation(mine, its)
  if (instrumentKey(instrument) !== instrumentKey(its.instrument)) {
    reasons.push({ code: 'other-instrument', instrument, setInstrument: its.instrument })
  }
  reasons.push(...differentDesignation(mine, its))
  if (mine.measured !== its.measured) reasons.push({ code: 'transconductance-differs', measured: mine.measured })
  if (reasons.length === 0 || !samePoint(testPoint, its.testPoint)) {
    reasons.push({ code: 'other-test-point', testPoint, setTestPoint: its.testPoint })
  }
  return reasons
}

function differentDesignation({ designation }: RankedCohort, its: RankedCohort): ExclusionReason[] {
  if (designation === null || designation === its.designation) return []
  return [{ code: 'other-designation', designation, setDesignation: its.designation ?? '' }]
}
