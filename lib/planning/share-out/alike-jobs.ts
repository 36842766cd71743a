/**
 * Jobs that ask for the same: the same sets of the same tubes at the same cost. Two amplifiers of
 * one kind that are compared at the test points ask so; where each circuit sees the tubes in its
 * own way, no two are alike. Alike jobs are one job that may be served several times: trying all
 * of them in every order is what makes a sharing slow to prove.
 */
import type { ShareColumn, ShareGroup, ShareProblem } from './share-problem'

export type AlikeJobs = {
  /** A job for all that are alike; its groups stand for theirs. */
  readonly problem: ShareProblem
  /** How many each job stands for. */
  readonly times: readonly number[]
  /** Where a group of the problem given stands in that one. */
  readonly standsIn: Int32Array
  /** Groups of each job given, in their order; by the job that stands for them, first come first. */
  readonly members: readonly (readonly (readonly number[])[])[]
}

/** Spread counts differences of x only, so a shift of all is nothing. */
function groupKey({ index, tubes, query }: ShareGroup): string {
  const { x, y, cost, price, place } = index
  const first = x[0] ?? 0
  return JSON.stringify([
    query,
    [...x].map((each) => each - first),
    ...[y, cost, price, place, tubes].map((of) => [...of]),
  ])
}

export function alikeJobs(problem: ShareProblem): AlikeJobs {
  const groupsOf: number[][] = Array.from({ length: problem.jobCount }, () => [])
  problem.groups.forEach(({ job }, group) => {
    groupsOf[job]?.push(group)
  })
  const keys = problem.groups.map(groupKey)
  const kinds = new Map<string, number[][]>()
  for (const groups of groupsOf) {
    if (groups.length === 0) continue
    const key = groups.map((group) => keys[group]).join('|')
    kinds.set(key, [...(kinds.get(key) ?? []), groups])
  }
  return standIns(problem, [...kinds.values()])
}

function standIns({ tubeCount, groups }: ShareProblem, members: AlikeJobs['members']): AlikeJobs {
  const standsIn = new Int32Array(groups.length)
  const kept: ShareGroup[] = []
  members.forEach((alike, job) => {
    alike[0]?.forEach((group, at) => {
      for (const each of alike) standsIn[each[at] as number] = kept.length
      kept.push({ ...(groups[group] as ShareGroup), job })
    })
  })
  return {
    problem: { tubeCount, jobCount: members.length, groups: kept },
    times: members.map(({ length }) => length),
    standsIn,
    members,
  }
}

/** One set for each group given, or null: of alike jobs the first come are served. */
export function toEachJob({ members, problem, standsIn }: AlikeJobs, columns: readonly ShareColumn[]) {
  const given: (ShareColumn | null)[] = Array.from({ length: standsIn.length }, () => null)
  const sets: ShareColumn[][] = Array.from({ length: problem.groups.length }, () => [])
  for (const column of columns) sets[column.group]?.push(column)
  for (const alike of members) {
    for (const groups of alike) {
      for (const group of groups) {
        const column = sets[standsIn[group] as number]?.shift()
        if (column) given[group] = { ...column, group }
      }
    }
  }
  return given
}
