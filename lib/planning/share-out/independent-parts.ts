/** Jobs that have no tube in common, not even by way of others, are shared out apart: each part is a smaller problem. */
import type { ShareProblem } from './share-problem'

export type SharePart = {
  readonly problem: ShareProblem
  /** Of its groups in the whole problem. */
  readonly groups: readonly number[]
}

/** The smallest first. Jobs that want nothing are in none. */
export function independentParts({ tubeCount, jobCount, groups }: ShareProblem): SharePart[] {
  const leader = leaders(groups, jobCount)
  const members = new Map<number, number[]>()
  groups.forEach(({ job }, group) => {
    const of = leader(job)
    members.set(of, [...(members.get(of) ?? []), group])
  })
  return [...members.values()].sort((a, b) => a.length - b.length).map((places) => part(tubeCount, groups, places))
}

function part(tubeCount: number, all: ShareProblem['groups'], places: readonly number[]): SharePart {
  const jobs = new Map<number, number>()
  for (const place of places) {
    const { job } = all[place] as ShareProblem['groups'][number]
    if (!jobs.has(job)) jobs.set(job, jobs.size)
  }
  const groups = places.map((place) => {
    const group = all[place] as ShareProblem['groups'][number]
    return { ...group, job: jobs.get(group.job) as number }
  })
  return { problem: { tubeCount, jobCount: jobs.size, groups }, groups: places }
}

/** Which job stands for all those that are tied to this one. */
function leaders(groups: ShareProblem['groups'], jobCount: number): (job: number) => number {
  const parent = Int32Array.from({ length: jobCount }, (_, job) => job)
  const leader = (job: number): number => {
    let at = job
    while (parent[at] !== at) {
      parent[at] = parent[parent[at] as number] as number
      at = parent[at] as number
    }
    return at
  }
  const holder = new Map<number, number>()
  for (const { job, tubes } of groups) {
    for (const tube of tubes) {
      const other = holder.get(tube)
      if (other === undefined) holder.set(tube, job)
      else parent[leader(job)] = leader(other)
    }
  }
  return leader
}
