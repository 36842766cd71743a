/**
 * A chosen set as it is shown: tubes in socket order, spreads, sides, and what
 * it loses against the best set.
 */
import { money } from '../money'
import { amps, ratio, watts } from '../units'
import { difference, evenSplit } from './arrangement'
import type { SocketDemand } from './candidate'
import type { Choice } from './choose'
import { doubtOfDifference, doubtOfRatio } from './doubt-of-difference'
import { above, tubeCautions } from './eligibility'
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
    match: gradeOf(choice, demand),
    // Where that hides how they differ, no band of the difference can be told either.
    doubt: hidesDifferences(choice, demand) ? null : doubtOfDifference(choice.points),
    slopeDoubt: doubtOfRatio(choice.points),
    cautions: setCautions(choice, demand),
    lost: best && lossAgainst(best, { spreads, price }),
  }
}

function spreadsOf({ cohort, found: { spread } }: Choice): Spreads {
  return {
    plateCurrent: amps(spread.microamps / 1e6),
    transconductance: cohort.measured ? ratio((spread.highest - spread.lowest) / spread.lowest) : null,
  }
}

function gradeOf(choice: Choice, demand: SocketDemand): MatchGrade {
  const { cohort, points } = choice
  const { spread } = choice.found
  const within = currentWithin(spread, cohort.scale) && slopeWithin(cohort.scale, spread.lowest, spread.highest)
  if (!within) return 'outside'
  const doubt = doubtOfDifference(points)
  if (doubt !== null && spread.microamps + 1e6 * doubt > cohort.scale.microamps) return 'uncertain'
  const slopeDoubt = doubtOfRatio(points)
  if (slopeDoubt !== null && spread.highest / spread.lowest - 1 + slopeDoubt > cohort.scale.millionths / 1e6)
    return 'uncertain'
  if (hidesDifferences(choice, demand)) return 'uncertain'
  return cohort.measured && unreadSlopes(choice).length === 0 ? 'both' : 'current-only'
}

/** What each does among its like is not what unlike ones do on one resistor: the feedback there is of all together. */
const hidesDifferences = ({ cohort, points, found: { spread } }: Choice, { arrangement }: SocketDemand): boolean =>
  cohort.predicted && arrangement === 'cathode-shared' && points.length > 1 && spread.microamps > 0

const unreadSlopes = ({ cohort, points }: Choice): readonly string[] =>
  cohort.predicted ? points.filter(({ tube }) => tube.test.transconductance === null).map(({ tube }) => tube.mark) : []

function overNow({ points }: Choice): SetCaution[] {
  const hot = points.flatMap(({ tube, predicted }) => {
    const rating = tube.ratings.maxPlateDissipation
    const dissipation = predicted?.plateDissipation.value
    if (rating === null || dissipation === undefined || !above(dissipation, rating)) return []
    return [{ mark: tube.mark, dissipation: watts(dissipation), rating }]
  })
  const [worst] = hot.toSorted((a, b) => b.dissipation / b.rating - a.dissipation / a.rating)
  if (!worst) return []
  const { dissipation, rating } = worst
  return [{ code: 'over-dissipation-now', marks: hot.map(({ mark }) => mark), dissipation, rating }]
}

function setCautions(choice: Choice, demand: SocketDemand): SetCaution[] {
  const { cohort, points } = choice
  const designations = [...new Set(points.map((point) => point.tube.designation))].sort()
  const cautions: SetCaution[] = []
  if (!cohort.measured && points.length > 1) cautions.push({ code: 'transconductance-not-measured' })
  if (designations.length > 1) cautions.push({ code: 'mixed-designations', designations })
  const marks = points.filter(({ predicted }) => predicted?.extrapolated).map(({ tube }) => tube.mark)
  if (marks.length > 0) cautions.push({ code: 'extrapolated', marks })
  if (hidesDifferences(choice, demand)) cautions.push({ code: 'shared-cathode' })
  const unread = unreadSlopes(choice)
  if (unread.length > 0) cautions.push({ code: 'transconductance-of-type', marks: unread })
  return [...cautions, ...overNow(choice)]
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
