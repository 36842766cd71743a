/**
 * One stock, many jobs: each job wants one or more sets, and a tube can go to one of them only.
 *
 * What is best, in this order: as many jobs served as can be (a job is served when every set
 * it wants is there), then the least cost of all sets together, in points
 * (lib/domain/matching/search/spread-cost.ts: a million is one yardstick). Cost holds spread,
 * and what choosing each tube costs beside: price, rarity, confidence.
 */
import type { BestSet, SetQuery } from '@/lib/domain/matching/search/best-set'
import type { SetIndex } from '@/lib/domain/matching/search/set-index'

export type ShareGroup = {
  /** Place of the job in the list of jobs. */
  readonly job: number
  readonly index: SetIndex
  /** Number of the tube in the whole stock, for each place of the index. */
  readonly tubes: Int32Array
  readonly query: Omit<SetQuery, 'adjustments' | 'excluded' | 'ceiling'>
}

export type ShareProblem = {
  /** Tubes in the stock, numbered from 0. */
  readonly tubeCount: number
  readonly jobCount: number
  readonly groups: readonly ShareGroup[]
}

/** A set that a group could be given. */
export type ShareColumn = {
  readonly group: number
  readonly set: BestSet
  /** Numbers of its tubes in the whole stock. */
  readonly tubes: readonly number[]
}

export type ShareStop = 'proved' | 'time' | 'cancelled'

export type ShareResult = {
  /** One for each group; null: this group goes without. */
  readonly chosen: readonly (ShareColumn | null)[]
  readonly jobsServed: number
  /** No way of sharing serves more. */
  readonly jobsAtMost: number
  /** Of all sets chosen, in points. */
  readonly cost: number
  /** No way of sharing that serves as many jobs as can be costs less. */
  readonly costAtLeast: number
  /** Of the worth (jobs, then cost), how far the best may still lie above what was found, in per cent. */
  readonly gapPercent: number
  /** The same with the jobs that are served first come, first served. */
  readonly greedy: { readonly jobsServed: number; readonly cost: number }
  readonly rounds: number
  readonly sets: number
  readonly stop: ShareStop
}

export type ShareSettings = {
  readonly seconds: number
  /** Seconds since some fixed instant: time is passed in. */
  readonly clock: () => number
  readonly onRound?: (round: { readonly rounds: number; readonly sets: number; readonly jobsAtMost: number }) => void
  readonly cancelled?: () => boolean
}

/** Ten thousand yardsticks: no set costs near as much, so no job is given up for a better match. */
export const JOB_WORTH = 10_000_000_000

export const costOf = ({ set }: ShareColumn): number => set.spread + set.cost

export function columnOf(problem: ShareProblem, group: number, set: BestSet): ShareColumn {
  const { tubes } = problem.groups[group] as ShareGroup
  return { group, set, tubes: set.places.map((place) => tubes[place] as number) }
}
