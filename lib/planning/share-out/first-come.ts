/**
 * First come, first served: jobs in their order, each given its best sets of what is left. It is
 * what a bench does by hand; the better way is measured against it and starts from it.
 */
import { bestSet } from '@/lib/domain/matching/search/best-set'
import { columnOf, costOf, type ShareColumn, type ShareProblem } from './share-problem'

export type FirstCome = {
  readonly columns: readonly ShareColumn[]
  readonly jobsServed: number
  readonly cost: number
}

const groupsOf = ({ groups }: ShareProblem, job: number): number[] =>
  groups.flatMap((group, at) => (group.job === job ? [at] : []))

/** `taken`: 1 for a tube that is gone. */
function excludedFor(problem: ShareProblem, group: number, taken: Uint8Array): Uint8Array {
  const tubes = problem.groups[group]?.tubes ?? new Int32Array()
  return Uint8Array.from(tubes, (tube) => taken[tube] as number)
}

/** The best set of what is left; null when there is none. */
export function bestOfTheRest(problem: ShareProblem, group: number, taken: Uint8Array): ShareColumn | null {
  const wanted = problem.groups[group]
  if (!wanted) throw new Error(`No group ${group}`)
  const set = bestSet(wanted.index, { ...wanted.query, excluded: excludedFor(problem, group, taken) })
  return set && columnOf(problem, group, set)
}

export function firstCome(problem: ShareProblem): FirstCome {
  const taken = new Uint8Array(problem.tubeCount)
  const columns: ShareColumn[] = []
  let jobsServed = 0
  for (let job = 0; job < problem.jobCount; job += 1) {
    const given = giveJob(problem, groupsOf(problem, job), taken)
    if (!given) continue
    jobsServed += 1
    columns.push(...given)
  }
  return { columns, jobsServed, cost: columns.reduce((sum, column) => sum + costOf(column), 0) }
}

/** All of its sets, taken; or null with nothing taken. */
function giveJob(problem: ShareProblem, groups: readonly number[], taken: Uint8Array): ShareColumn[] | null {
  const given: ShareColumn[] = []
  for (const group of groups) {
    const column = bestOfTheRest(problem, group, taken)
    if (!column) {
      for (const { tubes } of given) for (const tube of tubes) taken[tube] = 0
      return null
    }
    for (const tube of column.tubes) taken[tube] = 1
    given.push(column)
  }
  return given.length > 0 ? given : null
}
