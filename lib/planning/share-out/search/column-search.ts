/**
 * One part of a sharing (independent-parts.ts), jobs alike taken together, by column generation.
 *
 * 1. How many jobs can be served, match aside (count/jobs-program.ts), where first come, first
 *    served leaves that open and the part is small enough.
 * 2. Sets are found one by one: with a price on every tube (the duals of the relaxed program),
 *    the best set for a group at these prices is asked for; when no set is worth more than its
 *    group pays, the relaxed program over the sets known is that over all sets. The prices give
 *    a bound (pricing.ts). They are moved half way only between rounds, towards those of the best
 *    bound (Wentges 1997), which needs fewer rounds.
 * 3. Whole sharings: the relaxed one made whole bit by bit, then an integer program over the sets
 *    known.
 * 4. All sets that can be in a better sharing are listed, where they are few enough; the integer
 *    program over them settles what is best.
 *
 * Method: Dantzig and Wolfe, "Decomposition Principle for Linear Programs", Operations
 * Research 8 (1960); from memory.
 */
import type { Highs } from 'highs'
import { nextSets } from '@/lib/domain/matching/search/next-sets'
import { type AlikeJobs, alikeJobs, toEachJob } from '../alike-jobs'
import { JobsProgram } from '../count/jobs-program'
import { firstCome } from '../first-come'
import {
  columnOf,
  costOf,
  JOB_WORTH,
  type ShareColumn,
  type ShareGroup,
  type ShareProblem,
  type ShareResult,
  type ShareSettings,
  type ShareStop,
} from '../share-problem'
import { KnownSets } from './known-sets'
import { type Duals, MasterProgram } from './master-program'
import { polished } from './polished'
import { halfWay, Pricing, type Proof, whole } from './pricing'
import { type Whole, wholeSharing } from './whole-program'

/** Sets each group starts with, besides those given first come, first served. */
const SEEDS = 6
const MOST_ROUNDS = 500
/** Parts of the time after which it goes on to the next step. */
const COUNT_PART = 0.4
const POLISH_PART = 0.5
const SEARCH_PART = 0.6
const DIVE_PART = 0.75
/** For the integer program over the sets known. */
const KNOWN_PART = 0.15
/** Of a set: as good as none, as good as all. */
const NOTHING = 1e-6
const CERTAIN = 0.999
/** Worth less than this is no gain, points. */
const GAIN = 1
/** More sets than these are too many for the integer program. */
const LISTED = 6000
/** Listed again only with so many times the room. */
const WIDER = 1.1

export type PartResult = Omit<ShareResult, 'costAtLeast' | 'gapPercent'> & {
  /** No way of sharing this part is worth more. */
  readonly worthAtMost: number
}

export function sharePart(highs: Highs, problem: ShareProblem, settings: ShareSettings): PartResult {
  const alike = alikeJobs(problem)
  const master = new MasterProgram(highs, alike.problem, alike.times)
  try {
    return new ColumnSearch(highs, master, alike, settings).run(problem)
  } finally {
    master.dispose()
  }
}

class ColumnSearch {
  private readonly problem: ShareProblem
  private readonly known: KnownSets
  private readonly pricing: Pricing
  private mostJobs: number
  /** The lowest proved bound of the worth, and the prices that gave it. */
  private bound = Number.POSITIVE_INFINITY
  private proof: Proof | null = null
  private rounds = 0
  private readonly begun: number

  constructor(
    private readonly highs: Highs,
    private readonly master: MasterProgram,
    private readonly alike: AlikeJobs,
    private readonly settings: ShareSettings,
  ) {
    this.begun = settings.clock()
    this.problem = alike.problem
    this.known = new KnownSets(master, alike.problem, alike.times)
    this.pricing = new Pricing(alike.problem, alike.times)
    this.mostJobs = alike.times.reduce((sum, each) => sum + each, 0)
  }

  run(given: ShareProblem): PartResult {
    const greedy = firstCome(given)
    this.known.offer(
      greedy.columns.map((column) => ({ ...column, group: this.alike.standsIn[column.group] as number })),
    )
    this.problem.groups.forEach((_, group) => {
      this.seed(group)
    })
    this.report()
    this.countJobs()
    const searched = this.search()
    this.dive()
    this.settle()
    const { best, jobsServed, worth, size } = this.known
    return {
      chosen: toEachJob(this.alike, best),
      jobsServed,
      jobsAtMost: this.mostJobs,
      cost: JOB_WORTH * jobsServed - worth,
      // No set costs less than nothing.
      worthAtMost: Math.max(Math.min(this.bound, JOB_WORTH * this.mostJobs), worth),
      greedy: { jobsServed: greedy.jobsServed, cost: greedy.cost },
      rounds: this.rounds,
      sets: size,
      stop: this.stopped(searched),
    }
  }

  /** Stopped early or not, what leaves nothing open is proved. */
  private stopped(searched: ShareStop): ShareStop {
    if (!this.isOpen) return 'proved'
    return this.isCancelled ? 'cancelled' : searched
  }

  private get isCancelled(): boolean {
    return this.settings.cancelled?.() ?? false
  }

  /** False once this part of the time is gone, or all is to end. */
  private within(part: number): boolean {
    return !this.isCancelled && this.spent() <= part * this.settings.seconds
  }

  private spent(): number {
    return this.settings.clock() - this.begun
  }

  private left(): number {
    return this.isCancelled ? 0 : this.settings.seconds - this.spent()
  }

  private seed(group: number): void {
    const { index, query, job } = this.problem.groups[group] as ShareGroup
    const sets = nextSets(index, query, [], SEEDS + (this.alike.times[job] as number) - 1)
    for (const set of sets) this.known.add(columnOf(this.problem, group, set))
  }

  /** Asks for the most jobs the relaxed count allows, then for one fewer, until there is a way. */
  private countJobs(): void {
    const { jobsServed } = this.known
    if (jobsServed === this.mostJobs || !this.within(COUNT_PART)) return
    const program = JobsProgram.of(this.highs, {
      problem: this.problem,
      times: this.alike.times,
      secondsLeft: () => COUNT_PART * this.settings.seconds - this.spent(),
      cancelled: () => this.isCancelled,
    })
    if (!program) return
    this.lower(program.relaxedMost())
    for (let jobs = this.mostJobs; jobs > jobsServed && this.within(COUNT_PART); jobs -= 1) {
      const answer = program.serving(jobs)
      if (answer === 'no') this.lower(jobs - 1)
      else if (answer) {
        this.known.offer(polished(this.problem, answer, () => this.within(POLISH_PART)))
        return
      }
    }
  }

  private lower(jobs: number): boolean {
    if (jobs >= this.mostJobs) return false
    this.mostJobs = jobs
    this.master.atMost(jobs)
    this.bound = Number.POSITIVE_INFINITY
    this.proof = null
    return true
  }

  private search(): ShareStop {
    while (this.rounds < MOST_ROUNDS) {
      if (this.isCancelled) return 'cancelled'
      if (!this.within(SEARCH_PART)) return 'time'
      if (!this.round()) return 'proved'
    }
    return 'time'
  }

  /** False when nothing is left to gain. */
  private round(): boolean {
    this.rounds += 1
    const prices = whole(this.master.relaxed())
    const between = this.proof ? whole(halfWay(this.proof.prices, prices)) : prices
    let gained = this.take(between, prices)
    if (!gained && between !== prices) gained = this.take(prices, prices)
    // Asked every round: the sooner the jobs are fewer, the less is looked for in vain.
    if (this.lower(this.pricing.mostJobs(this.bound))) gained = true
    this.report()
    return gained
  }

  private report(): void {
    this.settings.onRound?.({ rounds: this.rounds, sets: this.known.size, jobsAtMost: this.mostJobs })
  }

  /** Asks every group at some prices; takes in what is a gain at those of the program. */
  private take(asked: Duals, paid: Duals): boolean {
    const { proof, found } = this.pricing.at(asked)
    const bound = this.pricing.bound(proof, this.mostJobs)
    if (bound < this.bound) {
      this.bound = bound
      this.proof = proof
    }
    const before = this.known.size
    for (const column of found) {
      const cost = costOf(column) + column.tubes.reduce((sum, tube) => sum + (paid.tubes[tube] as number), 0)
      if (cost < (paid.groups[column.group] as number) - GAIN) this.known.add(column)
    }
    return this.known.size > before
  }

  /**
   * Makes the fractional sharing whole bit by bit: what it takes for certain, and the set it takes
   * most of, are held, and sets are looked for that go well with these. So the sets a whole
   * sharing needs come to be known, which the fractional one had no use for.
   */
  private dive(): void {
    const held = new Set<ShareColumn>()
    while (this.isOpen && this.within(DIVE_PART)) {
      const prices = whole(this.master.relaxed())
      this.take(prices, prices)
      this.master.relaxed()
      const taken = this.master.taken().filter(({ part }) => part > NOTHING)
      if (taken.every(({ part }) => part > CERTAIN)) this.known.offer(taken.map(({ column }) => column))
      const parts = taken.filter(({ column }) => !held.has(column))
      if (parts.length === 0) break
      const certain = parts.filter(({ part }) => part > CERTAIN)
      // Two that are taken by half may want the same tubes.
      const most = parts.reduce((a, b) => (b.part > a.part ? b : a))
      for (const { column } of certain.length > 0 ? certain : [most]) held.add(column)
      this.master.certain(held)
    }
    this.master.certain(new Set())
  }

  private get isOpen(): boolean {
    return this.bound > this.known.worth
  }

  /** As many as can be. */
  private get allServed(): boolean {
    return this.known.jobsServed === this.mostJobs
  }

  /**
   * A better whole sharing of the sets known; then of all sets that can be in one worth more than
   * so much below the bound, as far below as keeps them few enough.
   */
  private settle(): void {
    if (!this.isOpen) return
    this.askOver(this.known.all, Math.min(0.5 * this.left(), KNOWN_PART * this.settings.seconds))
    const { proof, bound } = this
    if (!proof) return
    let [below, tooMany] = [bound - this.known.worth, Number.POSITIVE_INFINITY]
    while (this.isOpen && this.left() > 0 && below >= GAIN) {
      const useful = this.pricing.everyUseful(proof, below, LISTED)
      if (!useful) {
        tooMany = below
        below = Math.floor(below / 2)
        continue
      }
      if (!this.settleOver(useful, bound - below)) return
      const next = Math.min(bound - this.known.worth, Math.floor((below + tooMany) / 2))
      if (next < WIDER * below) return
      below = next
    }
  }

  /** `floor`: every sharing worth more is one of these sets. False when the time was too short. */
  private settleOver(useful: readonly ShareColumn[], floor: number): boolean {
    const columns = new Set([...useful.map((column) => this.known.add(column)), ...this.known.best])
    const { isBest, costAtLeast } = this.askOver([...columns], this.left())
    if (isBest) this.bound = Math.min(this.bound, Math.max(this.known.worth, floor))
    else if (this.allServed) this.bound = Math.min(this.bound, Math.max(JOB_WORTH * this.mostJobs - costAtLeast, floor))
    return isBest
  }

  private askOver(columns: readonly ShareColumn[], seconds: number): Whole {
    const { problem, mostJobs, known } = this
    const { times } = this.alike
    const jobs = this.allServed ? mostJobs : null
    const cancelled = () => this.isCancelled
    const answer = wholeSharing(this.highs, { problem, times, columns, start: known.best, jobs, seconds, cancelled })
    known.offer(answer.chosen)
    return answer
  }
}
