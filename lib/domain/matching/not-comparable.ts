/**
 * Good tubes that could not stand beside those of the closest set, and in
 * which way their tests differ.
 */
import type { Choice } from './choose'
import { instrumentKey, samePoint } from './cohort'
import type { Exclusion, ExclusionReason, TestedCandidate } from './proposal'
import type { RankedCohort } from './ranked-stock'

export function notComparable(
  cohorts: readonly RankedCohort[],
  closest: Choice,
  shown: readonly Choice[],
): Exclusion[] {
  const used = new Set(shown.flatMap((choice) => choice.points.map((point) => point.rank)))
  return cohorts
    .filter((cohort) => cohort !== closest.cohort)
    .flatMap((cohort) =>
      cohort.points
        .filter((point) => !used.has(point.rank))
        .map(({ tube }) => ({ candidate: tube, reasons: differences(tube, cohort, closest.cohort) })),
    )
}

function differences(tube: TestedCandidate, mine: RankedCohort, its: RankedCohort): ExclusionReason[] {
  const { testPoint, instrument } = tube.test
  const reasons: ExclusionReason[] = []
  if (instrumentKey(instrument) !== instrumentKey(its.instrument)) {
    reasons.push({ code: 'other-instrument', instrument, setInstrument: its.instrument })
  }
  if (mine.designation !== null && mine.designation !== its.designation) {
    reasons.push({ code: 'other-designation', designation: mine.designation, setDesignation: its.designation ?? '' })
  }
  if (mine.measured !== its.measured) reasons.push({ code: 'transconductance-differs', measured: mine.measured })
  if (reasons.length === 0 || !samePoint(testPoint, its.testPoint)) {
    reasons.push({ code: 'other-test-point', testPoint, setTestPoint: its.testPoint })
  }
  return reasons
}
