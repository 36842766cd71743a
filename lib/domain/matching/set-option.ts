/**
 * A chosen set as it is shown: tubes in socket order, spreads, sides, and what
 * it loses against the best set.
 */
import { money } from '../money'
import { amps, ratio } from '../units'
import { difference, evenSplit } from './arrangement'
import type { SocketDemand } from './candidate'
import type { Choice } from './choose'
import { doubtOfDifference, doubtOfRatio } from './doubt-of-difference'
import { tubeCautions } from './eligibility'
import type {
  Arrangement,
  LossAgainstBest,
  MatchGrade,
  SetCaution,
  SetOption,
  SetTube,
  Side,
  Spreads,
} from './proposal'
import type { TubePoint } from './ranked-stock'
import { currentWithin, scoreOf, slopeWithin } from './search/score'

export function setOption(choice: Choice, demand: SocketDemand, best: SetOption | null): SetOption {
  const { cohort, found } = choice
  const points = [...choice.points].sort((a, b) => a.markRank - b.markRank)
  const spreads = spreadsOf(choice)
  const price = money(found.price)
  return {
    key: points.map((point) => JSON.stringify(point.tube.tubeId)).join(','),
    ...seating(points, demand),
    predicted: cohort.predicted,
    instrument: cohort.instrument,
    testPoint: cohort.testPoint,
    spreads,
    score: scoreOf(cohort.scale, found.spread),
    price,
    match: gradeOf(choice),
    doubt: doubtOfDifference(choice.points),
    slopeDoubt: doubtOfRatio(choice.points),
    cautions: setCautions(choice),
    lost: best && lossAgainst(best, { spreads, price }),
  }
}

function spreadsOf({ cohort, found: { spread } }: Choice): Spreads {
  return {
    plateCurrent: amps(spread.microamps / 1e6),
    transconductance: cohort.measured ? ratio((spread.highest - spread.lowest) / spread.lowest) : null,
  }
}

function gradeOf({ cohort, points, found: { spread } }: Choice): MatchGrade {
  const within = currentWithin(spread, cohort.scale) && slopeWithin(cohort.scale, spread.lowest, spread.highest)
  if (!within) return 'outside'
  const doubt = doubtOfDifference(points)
  if (doubt !== null && spread.microamps + 1e6 * doubt > cohort.scale.microamps) return 'uncertain'
  const slopeDoubt = doubtOfRatio(points)
  if (slopeDoubt !== null && spread.highest / spread.lowest - 1 + slopeDoubt > cohort.scale.millionths / 1e6)
    return 'uncertain'
  return cohort.measured ? 'both' : 'current-only'
}

function setCautions({ cohort, points }: Choice): SetCaution[] {
  const designations = [...new Set(points.map((point) => point.tube.designation))].sort()
  const cautions: SetCaution[] = []
  if (!cohort.measured && points.length > 1) cautions.push({ code: 'transconductance-not-measured' })
  if (designations.length > 1) cautions.push({ code: 'mixed-designations', designations })
  const marks = points.filter(({ predicted }) => predicted?.extrapolated).map(({ tube }) => tube.mark)
  if (marks.length > 0) cautions.push({ code: 'extrapolated', marks })
  return cautions
}

type Seating = { readonly tubes: readonly SetTube[]; readonly arrangement: Arrangement | null }

function seating(points: readonly TubePoint[], demand: SocketDemand): Seating {
  const seat = ({ tube, predicted }: TubePoint, side: Side | null): SetTube => ({
    candidate: tube,
    predicted,
    cautions: tubeCautions(tube, demand),
    side,
  })
  const split = demand.pushPull ? evenSplit(points.map((point) => point.microamps)) : null
  if (!split) return { tubes: points.map((point) => seat(point, null)), arrangement: null }
  const on = (places: readonly number[], side: Side) => places.map((place) => seat(points[place] as TubePoint, side))
  return {
    tubes: [...on(split.sideA, 'A'), ...on(split.sideB, 'B')],
    arrangement: {
      sideA: amps(split.sumA / 1e6),
      sideB: amps(split.sumB / 1e6),
      difference: amps(difference(split) / 1e6),
    },
  }
}

function lossAgainst(best: SetOption, { spreads, price }: Pick<SetOption, 'spreads' | 'price'>): LossAgainstBest {
  const [mine, its] = [spreads.transconductance, best.spreads.transconductance]
  return {
    plateCurrent: amps((whole(spreads.plateCurrent) - whole(best.spreads.plateCurrent)) / 1e6),
    transconductance: mine === null || its === null ? null : ratio(mine - its),
    price: money(price - best.price),
  }
}

const whole = (current: number): number => Math.round(current * 1e6)
