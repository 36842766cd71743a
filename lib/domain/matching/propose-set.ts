/**
 * The best matched set in stock for a group of sockets by the weights of its arrangement,
 * three ready-made choices, and the next best, each exact for the figures given.
 *
 * Same tubes in, same proposal out, in whatever order they are given: ties go to the earlier
 * marks.
 */
import type { Candidate, MatchLimits, SocketDemand } from './candidate'
import { type Bounds, type Choice, choose, chooseFurther, chooseLeastPrice } from './choose'
import { exclusionReasons, isTested } from './eligibility'
import { MARGIN_CODES } from './margin-code'
import { FURTHER_SETS, LARGEST_SET } from './match-limits'
import { closenessOf, type MatchWeights, USUAL_WEIGHTS } from './match-weights'
import { naturalOrder } from './natural-order'
import { notComparable } from './not-comparable'
import type { Exclusion, Proposal, ProposalCaution, SetOption, TestedCandidate } from './proposal'
import { type RankedCohort, rankedCohorts } from './ranked-stock'
import { relaxations } from './relaxation'
import { marginsBroken } from './safe-margins'
import { setOption } from './set-option'
import { type Standing, standing } from './standing'
import { tubeCosts } from './tube-costs'

export function proposeSet(candidates: readonly Candidate[], demand: SocketDemand, given: MatchLimits): Proposal {
  assertSound(candidates, demand, given)
  const weights = given.weights ?? USUAL_WEIGHTS[demand.arrangement]
  const limits = { ...given, weights }
  const { usable, excluded } = sift(candidates, demand, limits)
  const cohorts = rankedCohorts(usable, demand.count, limits)
  const choices = chosen(cohorts, demand, limits)
  const { best, further } = choices
  const option = best && setOption(best, demand, null)
  const against = (choice: Choice | null): SetOption | null =>
    choice && setOption(choice, demand, isSame(best, choice) ? null : option)
  const shown = [best, choices.closest, choices.safe, choices.leastPrice, ...further].filter((each) => each !== null)
  return {
    best: option,
    closest: against(choices.closest),
    safe: against(choices.safe),
    leastPrice: against(choices.leastPrice),
    unsafe: best && !choices.safe ? unsafe(cohorts, demand, limits) : [],
    next: further.map((choice) => setOption(choice, demand, option)),
    usable: usable.length,
    excluded: best ? [...excluded, ...notComparable(cohorts, best, shown)] : excluded,
    relax: best ? [] : relaxations({ usable, excluded, demand, limits }),
    cautions: proposalCautions(candidates, demand),
    yardsticks: limits.yardsticks,
    weights,
  }
}

type Choices = {
  readonly best: Choice | null
  readonly closest: Choice | null
  readonly safe: Choice | null
  readonly leastPrice: Choice | null
  readonly further: readonly Choice[]
}

type Weighing = MatchLimits & { readonly weights: MatchWeights }

function chosen(cohorts: readonly RankedCohort[], demand: SocketDemand, limits: Weighing): Choices {
  const bounds: Bounds = { count: demand.count, cap: limits.priceCap ?? Number.POSITIVE_INFINITY }
  const all = weighedBy(limits.weights, cohorts, demand, limits)
  const best = choose(all, bounds)
  if (!best) return { best, closest: null, safe: null, leastPrice: null, further: [] }
  const keeping = cohorts.map((cohort) => ({
    ...cohort,
    points: cohort.points.filter((point) => marginsBroken(point, { demand, asOf: limits.asOf }).length === 0),
  }))
  const closest = choose(weighedBy(closenessOf(limits.weights), cohorts, demand, limits), bounds)
  const safe = choose(weighedBy(limits.weights, keeping, demand, limits), bounds)
  const leastPrice = chooseLeastPrice(cohorts, bounds)
  const shown = [best, closest, safe, leastPrice].filter((choice) => choice !== null)
  return { best, closest, safe, leastPrice, further: chooseFurther(all, bounds, shown, FURTHER_SETS) }
}

function weighedBy(
  weights: MatchWeights,
  cohorts: readonly RankedCohort[],
  demand: SocketDemand,
  { yardsticks, asOf }: MatchLimits,
): Standing[] {
  const running = cohorts.flatMap(({ points }) => points)
  const costOf = tubeCosts({ weights, demand, yard: Math.round(yardsticks.plateCurrent * 1e6), running, asOf })
  return cohorts.map((cohort) => standing(cohort, costOf))
}

function unsafe(cohorts: readonly RankedCohort[], demand: SocketDemand, limits: MatchLimits): Proposal['unsafe'] {
  const broken = cohorts.flatMap(({ points }) =>
    points.flatMap((point) => marginsBroken(point, { demand, asOf: limits.asOf })),
  )
  return MARGIN_CODES.map((code) => ({ code, tubes: broken.filter((each) => each === code).length }))
    .filter(({ tubes }) => tubes > 0)
    .sort((a, b) => b.tubes - a.tubes)
}

function assertSound(candidates: readonly Candidate[], demand: SocketDemand, { yardsticks }: MatchLimits): void {
  const { count } = demand
  if (!Number.isInteger(count) || count < 1 || count > LARGEST_SET) {
    throw new Error(`A set has 1 to ${LARGEST_SET} tubes, got ${count}`)
  }
  if (Math.round(yardsticks.plateCurrent * 1e6) < 1 || Math.round(yardsticks.transconductance * 1e6) < 1) {
    const { plateCurrent, transconductance } = yardsticks
    throw new Error(`Yardsticks must be above zero, got ${plateCurrent} A and ${transconductance}`)
  }
  const seen = new Set<string>()
  for (const { tubeId } of candidates) {
    if (seen.has(tubeId)) throw new Error(`Tube "${tubeId}" was given twice`)
    seen.add(tubeId)
  }
}

type Sifted = { readonly usable: readonly TestedCandidate[]; readonly excluded: readonly Exclusion[] }

function sift(candidates: readonly Candidate[], demand: SocketDemand, limits: MatchLimits): Sifted {
  const usable: TestedCandidate[] = []
  const excluded: Exclusion[] = []
  const inOrder = [...candidates].sort((a, b) => naturalOrder(a.mark, b.mark) || naturalOrder(a.tubeId, b.tubeId))
  for (const candidate of inOrder) {
    const reasons = exclusionReasons(candidate, demand, limits)
    if (reasons.length === 0 && isTested(candidate)) usable.push(candidate)
    else excluded.push({ candidate, reasons })
  }
  return { usable, excluded }
}

const isSame = (a: Choice | null, b: Choice): boolean =>
  a?.points.every((point) => b.points.some((other) => other.rank === point.rank)) ?? false

function proposalCautions(candidates: readonly Candidate[], demand: SocketDemand): ProposalCaution[] {
  const ofType = candidates.filter((tube) => tube.family === demand.family)
  const cautions: ProposalCaution[] = []
  if (demand.plateToCathodeVoltage === null) cautions.push({ code: 'plate-voltage-not-measured' })
  if (demand.screenVoltage === null && ofType.some((tube) => tube.ratings.maxScreenVoltage !== null)) {
    cautions.push({ code: 'screen-voltage-not-measured' })
  }
  if (demand.idlePlateDissipation === null) cautions.push({ code: 'idle-not-measured' })
  return cautions
}
