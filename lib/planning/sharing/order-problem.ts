/**
 * From jobs and stock to whole numbers: for each group the tubes that may stand in it, in
 * natural order of marks, and why the others may not.
 *
 * Tubes are compared as the choice of one set compares them: by what they would do in the
 * amplifier where that is known, else by their readings at their own test point, and then only
 * within a cohort (one instrument, one test point). All cohorts of a group stand in one index:
 * each is moved along x by more than a set may spread, so no set ever mixes two.
 *
 * What choosing a tube costs beside the spread (price, rarity, age of the test) and what weighs
 * how much is that of the choice of one set (lib/domain/matching/match-weights.ts): shop rules,
 * not measurements. One part is left out: the difference of the two sides of a set. It belongs to
 * no tube alone, and a set is priced here by its spread and its tubes; the sides are balanced as
 * well as the tubes chosen let them be.
 */
import type { Candidate, MatchLimits } from '@/lib/domain/matching/candidate'
import { carriedCandidates } from '@/lib/domain/matching/carried-stock'
import { exclusionReasons, isTested } from '@/lib/domain/matching/eligibility'
import { USUAL_WEIGHTS } from '@/lib/domain/matching/match-weights'
import { naturalOrder } from '@/lib/domain/matching/natural-order'
import { otherInstrument } from '@/lib/domain/matching/not-comparable'
import type { Exclusion, ExclusionReason, TestedCandidate } from '@/lib/domain/matching/proposal'
import { type RankedCohort, rankedCohorts, type TubePoint } from '@/lib/domain/matching/ranked-stock'
import { setIndex } from '@/lib/domain/matching/search/set-index'
import { POINTS_PER_YARDSTICK, type SpreadScale } from '@/lib/domain/matching/search/spread-cost'
import { tubeCosts } from '@/lib/domain/matching/tube-costs'
import type { ShareGroup, ShareProblem } from '../share-out/share-problem'
import type { ShareAsk, ShareOrder, ShareStock } from './share-order'

export type GroupPlace = { readonly point: TubePoint; readonly cohort: RankedCohort }

export type OrderGroup = {
  readonly job: number
  readonly ask: ShareAsk
  /** In the order of the index. */
  readonly places: readonly GroupPlace[]
  readonly excluded: readonly Exclusion[]
}

export type OrderProblem = {
  readonly problem: ShareProblem
  readonly groups: readonly OrderGroup[]
  /** Tubes of a family asked for that can stand in no set of any group. */
  readonly leftOut: readonly Exclusion[]
}

/** Microamps between cohorts: above any reading and any yardstick. */
const APART = 5_000_000
/** No cohort is wider, and no two lie as near. */
export const WITHIN_COHORT = APART / 2
/** So many keep within the range of the index. */
const MOST_COHORTS = 200

/** As this group weighs and compares. */
export const limitsOf = (ask: ShareAsk, limits: MatchLimits): MatchLimits => ({
  ...limits,
  weights: limits.weights ?? USUAL_WEIGHTS[ask.demand.arrangement],
  ...(ask.predictions ? { predictions: ask.predictions } : {}),
})

export function orderProblem(order: ShareOrder): OrderProblem {
  const stock = [...order.stock].sort(
    (a, b) => naturalOrder(a.candidate.mark, b.candidate.mark) || naturalOrder(a.candidate.tubeId, b.candidate.tubeId),
  )
  const numbers = new Map(stock.map(({ candidate }, number) => [candidate.tubeId, number]))
  if (numbers.size !== stock.length) throw new Error('A tube was given twice')
  const sifted = order.jobs.flatMap((job, at) =>
    job.groups.map((ask) => ({ job: at, ask, ...sift(stock, job.jobNumber, ask, limitsOf(ask, order.limits)) })),
  )
  const groups = sifted.map(({ reasons: _, ...group }): OrderGroup => group)
  return {
    problem: {
      tubeCount: stock.length,
      jobCount: order.jobs.length,
      groups: groups.map((group) => shareGroup(group, limitsOf(group.ask, order.limits), numbers)),
    },
    groups,
    leftOut: leftOut(stock, sifted),
  }
}

type Sifted = Pick<OrderGroup, 'places' | 'excluded'> & {
  /** Of tubes of the family asked for; by id. */
  readonly reasons: ReadonlyMap<string, readonly ExclusionReason[]>
}

function sift(all: readonly ShareStock[], jobNumber: string, { demand }: ShareAsk, limits: MatchLimits): Sifted {
  const stock = carriedFamily(all, demand, limits)
  const usable: TestedCandidate[] = []
  const excluded: Exclusion[] = []
  const reasons = new Map<string, readonly ExclusionReason[]>()
  for (const { candidate, heldFor } of stock) {
    const tube: Candidate = heldFor === jobNumber ? { ...candidate, state: { kind: 'free' } } : candidate
    const against = exclusionReasons(tube, demand, limits)
    if (against.length === 0 && isTested(tube)) usable.push(tube)
    else {
      reasons.set(tube.tubeId, against)
      excluded.push({ candidate: tube, reasons: against })
    }
  }
  const cohorts = [...rankedCohorts(usable, demand.count, limits)].sort((a, b) => b.points.length - a.points.length)
  const [largest] = cohorts
  const standing = cohorts.slice(0, MOST_COHORTS)
  const few = cohorts.filter(({ points }) => points.length < demand.count)
  for (const cohort of few)
    for (const { tube } of cohort.points) reasons.set(tube.tubeId, apart(cohort, largest ?? cohort, limits.carrying))
  // Too few for a set still count: one bought more may complete it.
  const places = standing
    .flatMap((cohort) => cohort.points.map((point) => ({ point, cohort })))
    .sort((a, b) => a.point.markRank - b.point.markRank)
  return { places, reasons, excluded }
}

/** Of the family asked for, as far as corrections are known on one instrument. */
function carriedFamily(all: readonly ShareStock[], { family }: ShareAsk['demand'], limits: MatchLimits): ShareStock[] {
  const stock = all.filter(({ candidate }) => candidate.family === family)
  const carried = carriedCandidates(
    stock.map(({ candidate }) => candidate),
    limits.carrying,
    limits.predictions ? 'everywhere' : 'same-point',
  )
  return stock.map((each, at) => ({ ...each, candidate: carried[at] as Candidate }))
}

/** Too few of its own kind to make a set of. */
function apart(
  cohort: RankedCohort,
  largest: RankedCohort,
  carrying: MatchLimits['carrying'],
): readonly ExclusionReason[] {
  if (cohort === largest) return []
  const { testPoint } = cohort
  const reasons = otherInstrument(cohort, largest, carrying)
  if (reasons.length > 0) return reasons
  if (cohort.measured !== largest.measured) return [{ code: 'transconductance-differs', measured: cohort.measured }]
  if (cohort.designation !== largest.designation) {
    const [designation, setDesignation] = [cohort.designation ?? '', largest.designation ?? '']
    return [{ code: 'other-designation', designation, setDesignation }]
  }
  return [{ code: 'other-test-point', testPoint, setTestPoint: largest.testPoint }]
}

function shareGroup(
  { job, ask, places }: OrderGroup,
  limits: MatchLimits,
  numbers: ReadonlyMap<string, number>,
): ShareGroup {
  const { count } = ask.demand
  const cohortAt = new Map<RankedCohort, number>()
  for (const { cohort } of places) if (!cohortAt.has(cohort)) cohortAt.set(cohort, cohortAt.size)
  const of = (read: (place: GroupPlace) => number) => Int32Array.from(places, read)
  const scale = scaleOf(limits)
  const costOf = tubeCosts({
    weights: limits.weights ?? USUAL_WEIGHTS[ask.demand.arrangement],
    demand: ask.demand,
    yard: scale.xYard,
    running: places.map(({ point }) => point),
    asOf: limits.asOf,
  })
  // What is charged for a set as a whole, by each of its tubes.
  const charge = ({ charge: yardsticks, weight }: RankedCohort['scale']) =>
    Math.round((POINTS_PER_YARDSTICK * yardsticks * weight) / 1000 / count)
  const index = setIndex({
    x: of(({ point, cohort }) => point.microamps + APART * (cohortAt.get(cohort) as number)),
    y: of(({ point }) => point.microsiemens),
    cost: of(({ point, cohort }) => costOf(point) + charge(cohort.scale)),
    price: of(({ point }) => point.price),
  })
  return {
    job,
    index,
    tubes: of(({ point }) => numbers.get(point.tube.tubeId) as number),
    query: {
      count,
      scale,
      xLimit: scale.xYard,
      yLimit: scale.yYard,
      ...(limits.priceCap === null ? {} : { priceCap: limits.priceCap }),
    },
  }
}

function scaleOf({ yardsticks: { plateCurrent, transconductance }, weights }: MatchLimits): SpreadScale {
  return {
    xYard: Math.round(plateCurrent * 1e6),
    yYard: Math.round(transconductance * 1e4),
    xWeight: Math.round((weights?.currentSpread ?? 1) * 1000),
    yWeight: Math.round((weights?.slopeSpread ?? 1) * 1000),
  }
}

/** With the reasons of the first group of its family. */
function leftOut(stock: readonly ShareStock[], sifted: readonly Sifted[]): Exclusion[] {
  const standing = new Set(
    sifted.flatMap(({ places, reasons }) =>
      places.flatMap(({ point: { tube } }) => (reasons.has(tube.tubeId) ? [] : [tube.tubeId])),
    ),
  )
  return stock.flatMap(({ candidate }) => {
    if (standing.has(candidate.tubeId)) return []
    const reasons = sifted.flatMap((group) => {
      const these = group.reasons.get(candidate.tubeId)
      return these && these.length > 0 ? [these] : []
    })[0]
    return reasons ? [{ candidate, reasons }] : []
  })
}
