/**
 * Sharing a stock over all open jobs, by column generation.
 *
 * Sets are found one by one: with a price on every tube (the duals of the relaxed program),
 * the best set for a group at these prices is asked for; when no set is worth more than its
 * group pays, the relaxed program over the sets known is that over all sets. The integer
 * program over the sets known then gives a way of sharing, and the prices a proof of how far
 * from the best it can be: for any prices u ≥ 0, w ≥ 0
 *
 *   worth ≤ Σ u_i + w·most + Σ_j max(0, job worth − w − Σ_g min over sets (cost + Σ u))
 *
 * (Lagrange's bound; the inner minima are exact). It is taken in whole points, with prices
 * rounded up, so no floating-point error is in it. Prices are moved half way only between
 * rounds, towards those of the best bound (Wentges 1997), which needs fewer rounds.
 *
 * Method: Dantzig and Wolfe, "Decomposition Principle for Linear Programs", Operations
 * Research 8 (1960); from memory.
 */
import type { Highs } from 'highs'
import type { BestSet } from '@/lib/domain/matching/search/best-set'
import { nextSets } from '@/lib/domain/matching/search/next-sets'
import { firstCome } from './first-come'
import { type Duals, MasterProgram } from './master-program'
import { columnOf, costOf, JOB_WORTH, type ShareColumn, type ShareProblem, type ShareResult } from './share-problem'

export type ShareSettings = {
  readonly seconds: number
  /** Seconds since some fixed instant: time is passed in. */
  readonly clock: () => number
  readonly onRound?: (round: { readonly rounds: number; readonly sets: number; readonly jobsAtMost: number }) => void
  readonly cancelled?: () => boolean
}

/** Sets each group starts with, besides those given first come, first served. */
const SEEDS = 6
const MOST_ROUNDS = 500
/** Asked of each group at once, sharing no tube: more need fewer rounds. */
const SETS_A_ROUND = 4
/** Part of the time for the search of sets; the rest is for the integer program. */
const SEARCH_PART = 0.5
const DIVE_PART = 0.7
/** Of a set: as good as none, as good as all. */
const NOTHING = 1e-6
const CERTAIN = 0.999
/** Worth less than this is no gain, points. */
const GAIN = 1

type Priced = {
  readonly bound: number
  readonly found: readonly { readonly group: number; readonly set: BestSet }[]
}

export function shareOut(highs: Highs, problem: ShareProblem, settings: ShareSettings): ShareResult {
  const master = new MasterProgram(highs, problem)
  try {
    const search = new ColumnSearch(master, problem, settings)
    const stop = search.run()
    return search.result(stop)
  } finally {
    master.dispose()
  }
}

class ColumnSearch {
  private readonly known = new Set<string>()
  private readonly greedy: ReturnType<typeof firstCome>
  private mostJobs: number
  /** The lowest proved bound of the worth, and the prices that gave it. */
  private bound = Number.POSITIVE_INFINITY
  private centre: Duals | null = null
  private rounds = 0
  private readonly begun: number

  constructor(
    private readonly master: MasterProgram,
    private readonly problem: ShareProblem,
    private readonly settings: ShareSettings,
  ) {
    this.begun = settings.clock()
    this.mostJobs = problem.jobCount
    this.greedy = firstCome(problem)
    for (const column of this.greedy.columns) this.add(column)
    problem.groups.forEach((_, group) => {
      this.seed(group)
    })
  }

  run(): ShareResult['stop'] {
    while (this.rounds < MOST_ROUNDS) {
      if (this.settings.cancelled?.()) return 'cancelled'
      if (this.spent() > SEARCH_PART * this.settings.seconds) return 'time'
      if (!this.round()) return 'proved'
    }
    return 'time'
  }

  /**
   * Makes the fractional sharing whole bit by bit: what it takes for certain, and the set it takes
   * most of, are held, and sets are looked for that go well with these. So the sets a whole
   * sharing needs come to be known, which the fractional one had no use for.
   */
  private dive(): void {
    const held = new Set<ShareColumn>()
    while (this.spent() < DIVE_PART * this.settings.seconds && !this.settings.cancelled?.()) {
      const prices = whole(this.master.relaxed())
      this.take(prices, prices)
      this.master.relaxed()
      const parts = this.master.taken().filter(({ column, part }) => part > NOTHING && !held.has(column))
      if (parts.length === 0) break
      const most = Math.max(...parts.map(({ part }) => part))
      for (const { column, part } of parts) if (part >= Math.min(most, CERTAIN)) held.add(column)
      this.master.certain(held)
    }
    this.master.certain(new Set())
  }

  result(stop: ShareResult['stop']): ShareResult {
    const { problem } = this
    if (stop === 'proved') this.dive()
    const seconds = stop === 'cancelled' ? 1 : this.settings.seconds - this.spent()
    const chosen = this.master.whole(this.greedy.columns, seconds)
    const jobsServed = new Set(chosen.map(({ group }) => problem.groups[group]?.job)).size
    const cost = chosen.reduce((sum, column) => sum + costOf(column), 0)
    const worth = JOB_WORTH * jobsServed - cost
    const byGroup = new Map(chosen.map((column) => [column.group, column]))
    return {
      chosen: problem.groups.map((_, group) => byGroup.get(group) ?? null),
      jobsServed,
      jobsAtMost: this.mostJobs,
      cost,
      costAtLeast: Math.max(0, JOB_WORTH * this.mostJobs - this.bound),
      gapPercent: worth > 0 ? (100 * Math.max(0, this.bound - worth)) / worth : 0,
      greedy: { jobsServed: this.greedy.jobsServed, cost: this.greedy.cost },
      rounds: this.rounds,
      sets: this.known.size,
      stop,
    }
  }

  private spent(): number {
    return this.settings.clock() - this.begun
  }

  private add(column: ShareColumn): boolean {
    const key = `${column.group}:${column.set.places.join(',')}`
    if (this.known.has(key)) return false
    this.known.add(key)
    this.master.add([column])
    return true
  }

  private seed(group: number): void {
    const wanted = this.problem.groups[group]
    if (!wanted) return
    for (const set of nextSets(wanted.index, wanted.query, [], SEEDS)) this.add(columnOf(this.problem, group, set))
  }

  /** False when nothing is left to gain. */
  private round(): boolean {
    this.rounds += 1
    const prices = whole(this.master.relaxed())
    const between = this.centre ? whole(halfWay(this.centre, prices)) : prices
    let gained = this.take(between, prices)
    if (!gained && between !== prices) gained = this.take(prices, prices)
    // Asked every round: the sooner the jobs are fewer, the less is looked for in vain.
    if (this.fewerJobs()) gained = true
    const { rounds, mostJobs } = this
    this.settings.onRound?.({ rounds, sets: this.known.size, jobsAtMost: mostJobs })
    return gained
  }

  /** Asks every group at some prices; takes in what is a gain at those of the program. */
  private take(asked: Duals, paid: Duals): boolean {
    const { bound, found } = this.priced(asked)
    if (bound < this.bound) {
      this.bound = bound
      this.centre = asked
    }
    let gained = false
    for (const { group, set } of found) {
      const column = columnOf(this.problem, group, set)
      const cost = costOf(column) + column.tubes.reduce((sum, tube) => sum + (paid.tubes[tube] as number), 0)
      if (cost < (paid.groups[group] as number) - GAIN && this.add(column)) gained = true
    }
    return gained
  }

  private priced(prices: Duals): Priced {
    const { problem } = this
    const least = new Float64Array(problem.groups.length)
    const found: Priced['found'][number][] = []
    problem.groups.forEach((wanted, group) => {
      const adjustments = Float64Array.from(wanted.tubes, (tube) => prices.tubes[tube] as number)
      // What costs more than the group pays is no gain; that nothing costs less is all the bound needs.
      const ceiling = Math.max(0, Math.ceil(prices.groups[group] as number))
      const sets = nextSets(wanted.index, { ...wanted.query, adjustments, ceiling }, [], SETS_A_ROUND)
      least[group] = sets[0]?.objective ?? ceiling + 1
      for (const set of sets) found.push({ group, set })
    })
    return { bound: this.lagrange(prices, least), found }
  }

  private lagrange({ tubes, jobs }: Duals, least: Float64Array): number {
    const worth = new Float64Array(this.problem.jobCount).fill(JOB_WORTH - jobs)
    this.problem.groups.forEach(({ job }, group) => {
      worth[job] = (worth[job] as number) - (least[group] as number)
    })
    const wanting = worth.map((each) => Math.max(0, each)).reduce((sum, each) => sum + each, 0)
    return tubes.reduce((sum, price) => sum + price, 0) + jobs * this.mostJobs + wanting
  }

  /** A bound that lies between two whole numbers of jobs is as good as the lower one. */
  private fewerJobs(): boolean {
    const dearest = this.problem.groups.map(dearestSet).reduce((sum, each) => sum + each, 0)
    if (!Number.isFinite(dearest)) return false
    // n jobs are worth at least n·worth less the dearest sets of all groups.
    const most = Math.floor((this.bound + dearest) / JOB_WORTH)
    if (most >= this.mostJobs) return false
    this.mostJobs = most
    this.master.atMost(most)
    this.bound = Number.POSITIVE_INFINITY
    this.centre = null
    return true
  }
}

/** No set of the group can cost more, points; infinite where its spread has no limit. */
function dearestSet({ index, query }: ShareProblem['groups'][number]): number {
  const { scale, xLimit, yLimit, count } = query
  const xMost = scale.xWeight === 0 ? 0 : ((xLimit ?? Number.POSITIVE_INFINITY) * scale.xWeight * 1000) / scale.xYard
  const yMost = scale.yWeight === 0 ? 0 : ((yLimit ?? Number.POSITIVE_INFINITY) * scale.yWeight * 1000) / scale.yYard
  const tube = index.cost.reduce((most, cost) => Math.max(most, cost), 0)
  return xMost + yMost + count * tube
}

/** Whole points, rounded up: any prices that are not negative prove a bound. */
const whole = ({ tubes, groups, jobs }: Duals): Duals => ({
  tubes: tubes.map((price) => Math.ceil(price - 1e-6)),
  groups,
  jobs: Math.ceil(jobs - 1e-6),
})

const halfWay = (one: Duals, other: Duals): Duals => ({
  tubes: one.tubes.map((price, at) => (price + (other.tubes[at] as number)) / 2),
  groups: other.groups,
  jobs: (one.jobs + other.jobs) / 2,
})
