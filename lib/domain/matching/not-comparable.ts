/**
 * Good tubes that could not stand beside those of the best set, and in
 * which way their tests differ.
 */

import type { Carrying, MatchLimits, TestPoint } from './candidate'
import { carriagesTo } from './carried-test'
import type { Choice } from './choose'
import { instrumentKey, samePoint } from './cohort'
import type { LineUp, ScaledCohort } from './line-up'
import type { ExclusionCode, ExclusionReason, TestedCandidate } from './proposal'
import type { Sifted } from './sift'
import { type StockInOrder, tubeAt } from './stock-in-order'

type Compared = {
  readonly cohorts: readonly LineUp[]
  readonly best: Choice
  readonly shown: readonly Choice[]
  readonly limits: Pick<MatchLimits, 'carrying'>
}

export function notComparable(
  stock: StockInOrder,
  { cohorts, best, shown, limits: { carrying } }: Compared,
): Pick<Sifted, 'excluded' | 'reasonsAt' | 'codesAt'> {
  const used = new Set(shown.flatMap((choice) => choice.points.map((point) => point.rank)))
  const cohortAt = new Map<number, LineUp>()
  for (const cohort of cohorts) {
    if (cohort === best.cohort) continue
    for (let at = 0; at < cohort.members.length; at += 1) {
      const place = cohort.members[at] as number
      if (!used.has(place)) cohortAt.set(place, cohort)
    }
  }
  const reasonsAt = (place: number) => {
    const cohort = cohortAt.get(place)
    return cohort ? differences(tubeAt(stock, place) as TestedCandidate, cohort, best.cohort, carrying) : []
  }
  return { excluded: Int32Array.from(cohortAt.keys()), reasonsAt, codesAt: codesByKind(stock, reasonsAt, cohortAt) }
}

/** Tubes of one kind in one cohort differ from the others in the same way. */
function codesByKind(
  { kindOf }: StockInOrder,
  reasonsAt: Sifted['reasonsAt'],
  cohortAt: ReadonlyMap<number, LineUp>,
): Sifted['codesAt'] {
  const known = new Map<LineUp, Map<number, readonly ExclusionCode[]>>()
  return (place) => {
    const cohort = cohortAt.get(place)
    if (!cohort) return []
    const ofCohort = known.get(cohort) ?? new Map<number, readonly ExclusionCode[]>()
    known.set(cohort, ofCohort)
    const kind = kindOf[place] as number
    const codes = ofCohort.get(kind) ?? reasonsAt(place).map(({ code }) => code)
    ofCohort.set(kind, codes)
    return codes
  }
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
