/**
 * The reference for `replaceFrom`: one tube of a set for another, the others staying as they are,
 * tube by tube as objects, not column by column.
 *
 *   least  x spread + y spread + sides + Σ cost  over the tubes that stay and the one that comes
 *
 * Ties go to the earlier marks. At the test point only tubes read on the same instrument at the
 * same point compare; with predictions all do.
 */

import type { Candidate, MatchLimits, SocketDemand } from '@/lib/domain/matching/candidate'
import { carriedCandidates } from '@/lib/domain/matching/carried-stock'
import type { Choice } from '@/lib/domain/matching/choose'
import { exclusionReasons, isTested } from '@/lib/domain/matching/eligibility'
import { USUAL_WEIGHTS } from '@/lib/domain/matching/match-weights'
import { predictedTube } from '@/lib/domain/matching/predicted-tube'
import type { SetOption, TestedCandidate } from '@/lib/domain/matching/proposal'
import { type RankedCohort, rankedCohorts, type TubePoint } from '@/lib/domain/matching/ranked-stock'
import type { ReplaceFault } from '@/lib/domain/matching/replacing/replace-from'
import { found } from '@/lib/domain/matching/search/found'
import { balanceCost, type SideBalance } from '@/lib/domain/matching/search/side-balance'
import { spreadCost } from '@/lib/domain/matching/search/spread-cost'
import { setOption } from '@/lib/domain/matching/set-option'
import { chargeOf, spreadScaleOf } from '@/lib/domain/matching/standing'
import { tubeCosts } from '@/lib/domain/matching/tube-costs'
import { weighedSides } from '@/lib/domain/matching/weighed-sides'
import { fail, ok, type Result } from '@/lib/domain/result'

export type OneToReplace = {
  /** Those that stay. They are not asked whether they might be chosen anew. */
  readonly beside: readonly Candidate[]
  /** Null: it is not known any more. */
  readonly out: Candidate | null
  /** In any order; what may not stand there is left out here. */
  readonly stock: readonly Candidate[]
}

export type Replacements = {
  /** Null: what goes out does not compare with those that stay. */
  readonly now: SetOption | null
  /** All that may stand there and compare, least loss first. */
  readonly ranked: readonly TestedCandidate[]
  /** The set with it, its loss being against the set as it is. Null: it does not compare. */
  readonly setWith: (tubeId: string) => SetOption | null
}

type Running = { readonly cohort: RankedCohort; readonly beside: readonly TubePoint[] }

export function replaceOne(
  tubes: OneToReplace,
  demand: SocketDemand,
  given: MatchLimits,
): Result<Replacements, ReplaceFault> {
  const size = { ...demand, count: tubes.beside.length + 1 }
  const limits = { ...given, weights: given.weights ?? USUAL_WEIGHTS[demand.arrangement] }
  const { beside, out, stock } = carriedOver(tubes, limits)
  const staying = settled(beside, limits)
  if (!staying.ok) return staying
  const own = new Set([...beside, ...(out ? [out] : [])].map(({ tubeId }) => tubeId))
  const usable = stock.filter(
    (tube): tube is TestedCandidate =>
      !own.has(tube.tubeId) && isTested(tube) && exclusionReasons(tube, demand, limits).length === 0,
  )
  const leaving = out && isTested(out) && isPredicted(out, limits) ? [out] : []
  const cohorts = rankedCohorts([...staying.value, ...leaving, ...usable], size.count, limits)
  const homes = cohorts.flatMap((cohort): Running[] => {
    const there = pointsOf(cohort, staying.value)
    return there.length === beside.length ? [{ cohort, beside: there }] : []
  })
  if (homes.length === 0 && cohorts.length > 0)
    return fail({ code: 'beside-not-comparable', marks: beside.map(({ mark }) => mark) })
  return ok(answered(homes, size, limits, { out, own }))
}

/** All to the instrument that most of the stock was read on, those that stay counting as they lie in no drawer. */
function carriedOver({ beside, out, stock }: OneToReplace, { carrying, predictions }: MatchLimits): OneToReplace {
  if (!carrying) return { beside, out, stock }
  const free = ({ tubeId }: Candidate) => stock.every((each) => each.tubeId !== tubeId)
  const more = [...beside, ...(out ? [out] : [])].filter(free)
  const all = carriedCandidates([...stock, ...more], carrying, predictions ? 'everywhere' : 'same-point')
  const byId = new Map(all.map((tube) => [tube.tubeId, tube]))
  const now = (tube: Candidate) => ({ ...tube, test: byId.get(tube.tubeId)?.test ?? tube.test })
  return { beside: beside.map(now), out: out && now(out), stock: stock.map(now) }
}

function settled(beside: readonly Candidate[], limits: MatchLimits): Result<TestedCandidate[], ReplaceFault> {
  const untested = beside.filter((tube) => !isTested(tube))
  if (untested.length > 0) return fail({ code: 'beside-not-tested', marks: untested.map(({ mark }) => mark) })
  const unpredicted = beside.filter((tube) => !isPredicted(tube, limits))
  if (unpredicted.length > 0) return fail({ code: 'beside-not-predicted', marks: unpredicted.map(({ mark }) => mark) })
  return ok(beside.filter(isTested))
}

const isPredicted = ({ tubeId }: Candidate, { predictions }: MatchLimits): boolean =>
  !predictions || predictedTube(predictions, tubeId) !== null

function pointsOf({ points }: RankedCohort, tubes: readonly Candidate[]): TubePoint[] {
  const wanted = new Set(tubes.map(({ tubeId }) => tubeId))
  return points.filter(({ tube }) => wanted.has(tube.tubeId))
}

type Weighing = MatchLimits & { readonly weights: NonNullable<MatchLimits['weights']> }
type Members = { readonly out: Candidate | null; readonly own: ReadonlySet<string> }

function answered(
  homes: readonly Running[],
  demand: SocketDemand,
  { weights, yardsticks, asOf }: Weighing,
  { out, own }: Members,
): Replacements {
  const running = homes.flatMap(({ cohort }) => cohort.points)
  const yard = Math.round(yardsticks.plateCurrent * 1e6)
  const costOf = tubeCosts({ weights, demand, yard, running, asOf })
  const sides = weighedSides({ weights, demand, yard })
  const choices = new Map<string, { readonly choice: Choice; readonly objective: number }>()
  for (const { cohort, beside } of homes) {
    for (const point of cohort.points) {
      if (beside.includes(point)) continue
      const choice = choiceOf(cohort, [...beside, point])
      choices.set(point.tube.tubeId, { choice, objective: objectiveOf(choice, costOf, sides) })
    }
  }
  const leaving = out && choices.get(out.tubeId)
  const now = leaving ? setOption(leaving.choice, demand, null) : null
  const ranked = running
    .filter(({ tube }) => choices.has(tube.tubeId) && !own.has(tube.tubeId))
    .sort((a, b) => order(choices, a) - order(choices, b) || a.markRank - b.markRank)
  return {
    now,
    ranked: ranked.map(({ tube }) => tube),
    setWith: (tubeId) => {
      const made = choices.get(tubeId)
      return made ? setOption(made.choice, demand, now) : null
    },
  }
}

const order = (choices: ReadonlyMap<string, { readonly objective: number }>, { tube }: TubePoint): number =>
  choices.get(tube.tubeId)?.objective ?? 0

const choiceOf = (cohort: RankedCohort, points: readonly TubePoint[]): Choice => ({
  cohort,
  points,
  found: found(points),
})

/** Points, as the search for whole sets counts them. */
function objectiveOf(
  { cohort, points, found: { spread } }: Choice,
  costOf: (point: TubePoint) => number,
  sides: SideBalance | null,
): number {
  const apart = spreadCost(spreadScaleOf(cohort), spread.microamps, spread.lowest, spread.highest)
  const between = sides === null ? 0 : balanceCost(sides, currentsOf(points))
  return apart + between + chargeOf(cohort) + points.reduce((total, point) => total + costOf(point), 0)
}

const currentsOf = (points: readonly TubePoint[]): number[] => points.map(({ microamps }) => microamps)
