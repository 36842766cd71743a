/**
 * The closest matched set in stock for a group of sockets, the cheapest one
 * that still matches, and the next best, each exact for the readings given.
 *
 * Same tubes in, same proposal out, in whatever order they are given: ties go
 * to the lower price, then to the earlier marks.
 */
import type { Candidate, MatchLimits, SocketDemand } from './candidate'
import { type Choice, chooseClosest, chooseLeastPrice } from './choose'
import { exclusionReasons, isTested } from './eligibility'
import { FURTHER_SETS, LARGEST_SET } from './match-limits'
import { naturalOrder } from './natural-order'
import { notComparable } from './not-comparable'
import type { Exclusion, Proposal, ProposalCaution, TestedCandidate } from './proposal'
import { type RankedCohort, rankedCohorts } from './ranked-stock'
import { relaxations } from './relaxation'
import { setOption } from './set-option'

export function proposeSet(candidates: readonly Candidate[], demand: SocketDemand, limits: MatchLimits): Proposal {
  assertSound(candidates, demand, limits)
  const { usable, excluded } = sift(candidates, demand, limits)
  const cohorts = rankedCohorts(usable, demand.count, limits)
  const bounds = { count: demand.count, cap: limits.priceCap ?? Number.POSITIVE_INFINITY }
  const best = chooseClosest(cohorts, bounds)
  const cheapest = best && chooseLeastPrice(cohorts, bounds)
  const shown = [best, cheapest].filter((choice) => choice !== null)
  const further = best ? furtherChoices(cohorts, bounds, shown) : []
  const closest = best && setOption(best, demand, null)
  return {
    closest,
    leastPrice: cheapest && setOption(cheapest, demand, isSame(best, cheapest) ? null : closest),
    next: further.map((choice) => setOption(choice, demand, closest)),
    usable: usable.length,
    excluded: best ? [...excluded, ...notComparable(cohorts, best, [...shown, ...further])] : excluded,
    relax: best ? [] : relaxations({ usable, excluded, demand, limits }),
    cautions: proposalCautions(candidates, demand),
    yardsticks: limits.yardsticks,
  }
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

function furtherChoices(
  cohorts: readonly RankedCohort[],
  bounds: { readonly count: number; readonly cap: number },
  shown: readonly Choice[],
): Choice[] {
  const used = new Set(shown.flatMap((choice) => choice.points.map((point) => point.rank)))
  const further: Choice[] = []
  while (further.length < FURTHER_SETS) {
    const left = cohorts.map((cohort) => ({
      ...cohort,
      points: cohort.points.filter((point) => !used.has(point.rank)),
    }))
    const choice = chooseClosest(left, bounds)
    if (!choice) break
    further.push(choice)
    for (const point of choice.points) used.add(point.rank)
  }
  return further
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
