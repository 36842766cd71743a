/** Sharing by trying every way: for small cases only. */
import { spreadCost } from '@/lib/domain/matching/search/spread-cost'
import { JOB_WORTH, type ShareProblem } from '@/lib/planning/share-out/share-problem'

/** Every subset of a size, places rising. */
export function subsets(size: number, count: number, from = 0): number[][] {
  if (count === 0) return [[]]
  const all: number[][] = []
  for (let place = from; place <= size - count; place += 1)
    for (const rest of subsets(size, count - 1, place + 1)) all.push([place, ...rest])
  return all
}

/** All sets of a group with their cost, by trying every subset. */
export function setsOf({ groups }: ShareProblem, group: number): { cost: number; tubes: number[] }[] {
  const wanted = groups[group]
  if (!wanted) return []
  const { index, query, tubes } = wanted
  const at = (place: number) => index.place.indexOf(place)
  return subsets(tubes.length, query.count).flatMap((places) => {
    const rows = places.map(at)
    const xs = rows.map((row) => index.x[row] as number)
    const ys = rows.map((row) => index.y[row] as number)
    const [range, low, high] = [Math.max(...xs) - Math.min(...xs), Math.min(...ys), Math.max(...ys)]
    if (range > (query.xLimit ?? Infinity) || (high - low) * 10_000 > (query.yLimit ?? Infinity) * low) return []
    const cost =
      spreadCost(query.scale, range, low, high) + rows.reduce((sum, row) => sum + (index.cost[row] as number), 0)
    return [{ cost, tubes: places.map((place) => tubes[place] as number) }]
  })
}

/** The best worth. */
export function bestWorth(problem: ShareProblem): number {
  const sets = problem.groups.map((_, group) => setsOf(problem, group))
  const ofJob = (job: number) => problem.groups.flatMap((group, at) => (group.job === job ? [at] : []))
  const from = (job: number, taken: ReadonlySet<number>): number => {
    if (job === problem.jobCount) return 0
    let best = from(job + 1, taken)
    const give = (groups: readonly number[], now: ReadonlySet<number>, cost: number): void => {
      const [group, ...rest] = groups
      if (group === undefined) {
        best = Math.max(best, JOB_WORTH - cost + from(job + 1, now))
        return
      }
      for (const set of sets[group] ?? [])
        if (set.tubes.every((tube) => !now.has(tube))) give(rest, new Set([...now, ...set.tubes]), cost + set.cost)
    }
    const groups = ofJob(job)
    if (groups.length > 0) give(groups, taken, 0)
    return best
  }
  return from(0, new Set())
}

/** As an integer program in the LP format, over every set there is; a job is worth 100 yardsticks. */
export function sharingAsText(problem: ShareProblem): string {
  const costs: string[] = []
  const ofGroup = problem.groups.map(({ job }) => [`- y${job}`])
  const ofTube: string[][] = Array.from({ length: problem.tubeCount }, () => [])
  const names: string[] = []
  problem.groups.forEach((_, group) => {
    setsOf(problem, group).forEach(({ cost, tubes }, at) => {
      const name = `x${group}_${at}`
      names.push(name)
      costs.push(`+ ${cost} ${name}`)
      ofGroup[group]?.push(`+ ${name}`)
      for (const tube of tubes) ofTube[tube]?.push(`+ ${name}`)
    })
  })
  const jobs = Array.from({ length: problem.jobCount }, (_, job) => `y${job}`)
  return [
    'Minimize',
    ...jobs.map((job) => `- 100000000 ${job}`),
    ...costs,
    'Subject To',
    ...ofGroup.map((terms, group) => `g${group}: ${terms.join(' ')} = 0`),
    ...ofTube.flatMap((terms, tube) => (terms.length > 0 ? [`t${tube}: ${terms.join(' ')} <= 1`] : [])),
    'Binary',
    ...jobs,
    ...names,
    'End',
  ].join('\n')
}
