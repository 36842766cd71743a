/**
 * What a sharing leaves open: which tubes to buy so that more jobs are served, and what it would
 * cost a group to do without the tubes it was given.
 *
 * A tube to buy is taken to match whatever it is added to, so it is counted only: the set it
 * completes says near which figures it must lie. Jobs that need the fewest come first. That is
 * a list for the counter, not a proof: another sharing might need one tube less.
 */
import { type BestSet, bestSet } from '@/lib/domain/matching/search/best-set'
import { bestOfTheRest } from './first-come'
import { columnOf, costOf, type ShareColumn, type ShareProblem } from './share-problem'

export type ToBuy = {
  readonly group: number
  readonly count: number
  /** What is there already; null when nothing is. */
  readonly beside: ShareColumn | null
}

export type JobToBuyFor = { readonly job: number; readonly tubes: number; readonly groups: readonly ToBuy[] }

type Chosen = readonly (ShareColumn | null)[]

function takenBy(problem: ShareProblem, chosen: Chosen): Uint8Array {
  const taken = new Uint8Array(problem.tubeCount)
  for (const column of chosen) for (const tube of column?.tubes ?? []) taken[tube] = 1
  return taken
}

/** The largest part of a set that is left within the limits, and so the fewest to buy. */
function toBuy(problem: ShareProblem, group: number, taken: Uint8Array): ToBuy {
  const wanted = problem.groups[group]
  if (!wanted) throw new Error(`No group ${group}`)
  const excluded = Uint8Array.from(wanted.tubes, (tube) => taken[tube] as number)
  for (let count = wanted.query.count; count > 0; count -= 1) {
    const set: BestSet | null = bestSet(wanted.index, { ...wanted.query, count, excluded })
    if (set) return { group, count: wanted.query.count - count, beside: columnOf(problem, group, set) }
  }
  return { group, count: wanted.query.count, beside: null }
}

function forJob(problem: ShareProblem, job: number, taken: Uint8Array): JobToBuyFor {
  const now = taken.slice()
  const groups = problem.groups.flatMap((group, at) => {
    if (group.job !== job) return []
    const one = toBuy(problem, at, now)
    for (const tube of one.beside?.tubes ?? []) now[tube] = 1
    return [one]
  })
  return { job, tubes: groups.reduce((sum, { count }) => sum + count, 0), groups }
}

/** Jobs that go without, the one that needs the fewest first; each with what is left after those before it. */
export function jobsToBuyFor(problem: ShareProblem, chosen: Chosen): JobToBuyFor[] {
  const served = new Set(chosen.flatMap((column, at) => (column ? [problem.groups[at]?.job] : [])))
  let waiting = Array.from({ length: problem.jobCount }, (_, job) => job).filter(
    (job) => !served.has(job) && problem.groups.some((group) => group.job === job),
  )
  const taken = takenBy(problem, chosen)
  const list: JobToBuyFor[] = []
  while (waiting.length > 0) {
    const [next] = waiting.map((job) => forJob(problem, job, taken)).sort((a, b) => a.tubes - b.tubes || a.job - b.job)
    if (!next) break
    list.push(next)
    for (const { beside } of next.groups) for (const tube of beside?.tubes ?? []) taken[tube] = 1
    waiting = waiting.filter((job) => job !== next.job)
  }
  return list
}

export type Swap = { readonly instead: ShareColumn; readonly extraCost: number }

/** The best set of what nobody was given; null when nothing is left that would do. */
export function swapFor(problem: ShareProblem, chosen: Chosen, group: number): Swap | null {
  const now = chosen[group]
  if (!now) return null
  const instead = bestOfTheRest(problem, group, takenBy(problem, chosen))
  return instead && { instead, extraCost: costOf(instead) - costOf(now) }
}
