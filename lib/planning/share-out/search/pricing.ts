/**
 * What the sets of each group cost at some prices of tubes, and the bound that follows from it:
 * for any prices u, w ≥ 0
 *
 *   worth ≤ Σ u_i + w·most + Σ_j times_j · max(0, job worth − w − Σ_g least (cost + Σ u))
 *
 * (Lagrange's; the inner minima are exact). Prices are whole points, so no floating-point error
 * is in it.
 */
import type { BestSet } from '@/lib/domain/matching/search/best-set'
import { nextSets } from '@/lib/domain/matching/search/next-sets'
import { columnOf, JOB_WORTH, type ShareColumn, type ShareGroup, type ShareProblem } from '../share-problem'
import { everySet } from './every-set'
import type { Duals } from './master-program'

/** Asked of each group at once, sharing no tube: more need fewer rounds. */
const SETS_A_ROUND = 4

/** Prices, and what the cheapest set of each group costs at them (or a bound below that). */
export type Proof = { readonly prices: Duals; readonly least: Float64Array }

export type Priced = { readonly proof: Proof; readonly found: readonly ShareColumn[] }

export class Pricing {
  constructor(
    private readonly problem: ShareProblem,
    private readonly times: readonly number[],
  ) {}

  at(prices: Duals): Priced {
    const least = new Float64Array(this.problem.groups.length)
    const found: ShareColumn[] = []
    this.problem.groups.forEach((wanted, group) => {
      // What costs more than the group pays is no gain; that nothing costs less is all the bound needs.
      const ceiling = Math.max(0, Math.ceil(prices.groups[group] as number))
      const query = { ...wanted.query, adjustments: adjustmentsOf(wanted, prices), ceiling }
      const sets: readonly BestSet[] = nextSets(wanted.index, query, [], SETS_A_ROUND)
      least[group] = sets[0]?.objective ?? ceiling + 1
      for (const set of sets) found.push(columnOf(this.problem, group, set))
    })
    return { proof: { prices, least }, found }
  }

  /** No sharing that serves at most so many jobs is worth more. */
  bound(proof: Proof, mostJobs: number): number {
    const { tubes, jobs } = proof.prices
    const wanting = this.gains(proof).reduce((sum, gain, job) => sum + this.timesOf(job) * Math.max(0, gain), 0)
    return tubes.reduce((sum, price) => sum + price, 0) + jobs * mostJobs + wanting
  }

  /** A bound that lies between two whole numbers of jobs is as good as the lower one. */
  mostJobs(bound: number): number {
    const { groups } = this.problem
    const dearest = groups.reduce((sum, group) => sum + this.timesOf(group.job) * dearestSet(group), 0)
    // n jobs are worth at least n·worth less the dearest sets of all groups.
    return Math.floor((bound + dearest) / JOB_WORTH)
  }

  /**
   * Every set that may be in a sharing worth more than so much below the bound: a set that costs
   * more above the least of its group lowers the bound by as much. null: more than `most`.
   */
  everyUseful(proof: Proof, below: number, most: number): readonly ShareColumn[] | null {
    const gains = this.gains(proof)
    const useful: ShareColumn[] = []
    for (const [group, wanted] of this.problem.groups.entries()) {
      const ceiling = (proof.least[group] as number) + below + Math.min(0, gains[wanted.job] as number)
      const adjustments = adjustmentsOf(wanted, proof.prices)
      const sets = everySet(wanted.index, { ...wanted.query, adjustments, ceiling, most: most - useful.length })
      if (!sets) return null
      for (const set of sets) useful.push(columnOf(this.problem, group, set))
    }
    return useful
  }

  /** What serving each job is worth at some prices; may be below 0. */
  private gains({ prices, least }: Proof): Float64Array {
    const gains = new Float64Array(this.problem.jobCount).fill(JOB_WORTH - prices.jobs)
    this.problem.groups.forEach(({ job }, group) => {
      gains[job] = (gains[job] as number) - (least[group] as number)
    })
    return gains
  }

  private timesOf(job: number): number {
    return this.times[job] as number
  }
}

const adjustmentsOf = ({ tubes }: ShareGroup, prices: Duals): Float64Array =>
  Float64Array.from(tubes, (tube) => prices.tubes[tube] as number)

/** No set of the group can cost more, points; infinite where its spread has no limit. */
function dearestSet({ index, query }: ShareGroup): number {
  const { scale, xLimit, yLimit, count } = query
  const xMost = scale.xWeight === 0 ? 0 : ((xLimit ?? Number.POSITIVE_INFINITY) * scale.xWeight * 1000) / scale.xYard
  const yMost = scale.yWeight === 0 ? 0 : ((yLimit ?? Number.POSITIVE_INFINITY) * scale.yWeight * 1000) / scale.yYard
  const tube = index.cost.reduce((most, cost) => Math.max(most, cost), 0)
  return xMost + yMost + count * tube
}

/** Whole points, rounded up: any prices that are not negative prove a bound. */
export const whole = ({ tubes, groups, jobs }: Duals): Duals => ({
  tubes: tubes.map((price) => Math.ceil(price - 1e-6)),
  groups,
  jobs: Math.ceil(jobs - 1e-6),
})

export const halfWay = (one: Duals, other: Duals): Duals => ({
  tubes: one.tubes.map((price, at) => (price + (other.tubes[at] as number)) / 2),
  groups: other.groups,
  jobs: (one.jobs + other.jobs) / 2,
})
