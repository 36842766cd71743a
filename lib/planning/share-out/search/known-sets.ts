/** The sets known so far, each once, and the best whole sharing met. */
import { costOf, JOB_WORTH, type ShareColumn, type ShareProblem } from '../share-problem'
import type { MasterProgram } from './master-program'

const keyOf = ({ group, set }: ShareColumn): string => `${group}:${set.places.join(',')}`

export class KnownSets {
  best: readonly ShareColumn[] = []
  private readonly byKey = new Map<string, ShareColumn>()
  /** The first group of each job: a job is served when it has its sets, this one with the others. */
  private readonly first: ReadonlySet<number>

  constructor(
    private readonly master: MasterProgram,
    private readonly problem: ShareProblem,
    private readonly times: readonly number[],
  ) {
    const first = new Map<number, number>()
    problem.groups.forEach(({ job }, group) => {
      if (!first.has(job)) first.set(job, group)
    })
    this.first = new Set(first.values())
  }

  get size(): number {
    return this.byKey.size
  }

  get all(): readonly ShareColumn[] {
    return [...this.byKey.values()]
  }

  get jobsServed(): number {
    return this.jobsOf(this.best)
  }

  get worth(): number {
    return this.worthOf(this.best)
  }

  /** The set as it is known from now on. */
  add(column: ShareColumn): ShareColumn {
    const key = keyOf(column)
    const known = this.byKey.get(key)
    if (known) return known
    this.byKey.set(key, column)
    this.master.add([column])
    return column
  }

  /** Takes in the sets; the sharing they are, if they are one, is kept where it is the best so far. */
  offer(columns: readonly ShareColumn[]): void {
    const known = columns.map((column) => this.add(column))
    if (this.worthOf(known) > this.worth && this.isSharing(known)) this.best = known
  }

  /** No tube twice, no job served oftener than it stands for, or with a part of its sets. */
  private isSharing(columns: readonly ShareColumn[]): boolean {
    const tubes = columns.flatMap((column) => column.tubes)
    const given = new Int32Array(this.problem.groups.length)
    for (const { group } of columns) given[group] = (given[group] as number) + 1
    const ofJob = new Map<number, number>()
    return (
      new Set(tubes).size === tubes.length &&
      this.problem.groups.every(({ job }, group) => {
        const sets = given[group] as number
        if (!ofJob.has(job)) ofJob.set(job, sets)
        return ofJob.get(job) === sets && sets <= (this.times[job] as number)
      })
    )
  }

  private jobsOf(columns: readonly ShareColumn[]): number {
    return columns.filter(({ group }) => this.first.has(group)).length
  }

  private worthOf(columns: readonly ShareColumn[]): number {
    return JOB_WORTH * this.jobsOf(columns) - columns.reduce((sum, column) => sum + costOf(column), 0)
  }
}
