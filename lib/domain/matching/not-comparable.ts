/**
 * Good tubes that could not stand beside those of the best set, and in
 * which way their tests differ.
 */

import type { Carrying, TestPoint } from './candidate'
import { carriagesTo } from './carried-test'
import type { Choice } from './choose'
import { instrumentKey, samePoint } from './cohort'
import type { LineUp, ScaledCohort } from './line-up'
import type { Exclusion, ExclusionReason, TestedCandidate } from './proposal'
import { type StockInOrder, tubeAt } from './stock-in-order'

export function notComparable(
  stock: StockInOrder,
  cohorts: readonly LineUp[],
  best: Choice,
  shown: readonly Choice[],
  carrying: Carrying | undefined,
): Exclusion[] {
  const used = new Set(shown.flatMap((choice) => choice.points.map((point) => point.rank)))
  return cohorts
    .filter((cohort) => cohort !== best.cohort)
    .flatMap((cohort) =>
      Array.from(cohort.members)
        .filter((place) => !used.has(place))
        .map((place) => {
          const tube = tubeAt(stock, place) as TestedCandidate
          return { candidate: tube, reasons: differences(tube, cohort, best.cohort, carrying) }
        }),
    )
}

function differences(
  tube: TestedCandidate,
  mine: ScaledCohort,
  its: ScaledCohort,
  carrying: Carrying | undefined,
): ExclusionReason[] {
  const { testPoint } = tube.test
  const reasons: ExclusionReason[] = []
  if (mine.predicted) return differentDesignation(mine, its)
  reasons.push(...otherInstrument({ ...tube.test, measured: mine.measured }, its, carrying))
  reasons.push(...differentDesignation(mine, its))
  if (mine.measured !== its.measured) reasons.push({ code: 'transconductance-differs', measured: mine.measured })
  if (reasons.length === 0 || !samePoint(testPoint, its.testPoint)) {
    reasons.push({ code: 'other-test-point', testPoint, setTestPoint: its.testPoint })
  }
  return reasons
}

function differentDesignation({ designation }: ScaledCohort, its: ScaledCohort): ExclusionReason[] {
  if (designation === null || designation === its.designation) return []
  return [{ code: 'other-designation', designation, setDesignation: its.designation ?? '' }]
}

type Read = { readonly instrument: string; readonly testPoint: TestPoint; readonly measured: boolean }

/** Empty: they were read on one instrument, or a correction is known and only their test points keep them apart. */
export function otherInstrument(mine: Read, its: Read, carrying: Carrying | undefined): ExclusionReason[] {
  const { instrument, testPoint, measured } = mine
  if (instrumentKey(instrument) === instrumentKey(its.instrument)) return []
  const carriage = carriagesTo(its.instrument, carrying?.corrections ?? []).get(instrumentKey(instrument))
  const lacks = carriage && measured && !carriage.slope ? 'transconductance' : 'any'
  if (carriage && lacks === 'any' && !samePoint(testPoint, its.testPoint)) return []
  return [{ code: 'other-instrument', instrument, setInstrument: its.instrument, lacks }]
}
