/**
 * The choice of sets when their number lies in a range: how little it can
 * cost, and the whole choices met on the way. `plan-sets.ts` tells the steps.
 */
import type { Highs } from 'highs'
import type { Plane } from '@/lib/domain/pairing/plane'
import { type Cut, cutPrices } from './cut-prices'
import { dive } from './dive'
import type { Incumbent } from './incumbent'
import { narrowedList } from './narrowed-list'
import { boundOf, type Prices, pricesOf, reducedCosts } from './price-bound'
import { RelaxedSets } from './relaxed-sets'
import { roundedChoice } from './rounded-choice'
import type { Column, Count, Limits, Relaxed, SetProgram } from './set-program'
import type { FoundSet, SetSearch } from './set-search'
import { brokenCuts } from './subset-cuts'

/** Price of a point that no set may take any more. */
const OUT = -1e12
/** A set must save more than this to be let in. */
const WORTHWHILE = 1e-4
/** Sets let in at once, and how many of them may share a point. */
const LET_IN = 3000
const SHARING = 10
/** More than these are too many for the whole-number program. */
const LISTED = 40_000
const CUT_ROUNDS = 60
/** Cuts of one round, and rounds without a gain of this share before it stops. */
const CUTS_AT_ONCE = 60
const GAIN = 1e-5
const FRUITLESS = 6
/** First ceiling above the bound, as a share of it. */
const STEP = 0.004
/** Of that share, from ceiling to ceiling; and down again where too many sets lie below it. */
const GROWTH = 1.5
const SMALLER = 3
const SMALLEST_STEP = 1e-5
/** Sets for each tube that a quick whole choice is made of. */
const QUICK = 12

export type Tools = {
  readonly highs: Highs
  readonly plane: Plane
  readonly search: SetSearch
  readonly program: SetProgram
  readonly incumbent: Incumbent
  readonly limits: Limits
  /** Whether whole choices are also sought aside from the proof. */
  readonly shortcuts: boolean
  readonly report: (stage: string, figures: Readonly<Record<string, number>>) => void
}

export class Branch {
  /** No choice in this branch costs less, except the incumbent. */
  bound = Number.NEGATIVE_INFINITY
  relaxed: Relaxed | null = null
  /** Prices of the highest bound, and the least reduced cost there is at them. */
  private ground: { readonly prices: Prices; readonly cuts: readonly Cut[]; readonly least: number } | null = null
  private cuts: readonly Cut[] = []
  private readonly columns: Column[] = []
  private readonly known = new Set<string>()
  private readonly program: RelaxedSets

  constructor(
    private readonly tools: Tools,
    private readonly count: Count,
    columns: readonly Column[],
  ) {
    const { highs, limits, plane } = tools
    this.program = new RelaxedSets(highs, limits, plane.x.length, plane.singleCost, count)
    this.letIn(columns)
  }

  dispose(): void {
    this.program.dispose()
  }

  get isOpen(): boolean {
    return this.bound < this.tools.incumbent.cost
  }

  split(at: number): readonly [Branch, Branch] {
    const { least, most } = this.count
    const halves = [
      { least, most: at },
      { least: at + 1, most },
    ].map((count) => {
      const half = new Branch(this.tools, count, this.columns)
      half.bound = this.bound
      return half
    })
    return halves as unknown as [Branch, Branch]
  }

  /** Lets sets in until none of all there are would lower the relaxed cost; false when stopped before. */
  generate(): boolean {
    const { plane, report } = this.tools
    while (!this.isOver) {
      const relaxed = this.program.solve()
      if (!relaxed) return false
      this.relaxed = relaxed
      this.round(this.columns, relaxed)
      const prices = pricesOf(relaxed)
      const { found, least } = this.below(prices)
      const bound = boundOf(plane, prices, this.count, least)
      if (bound > this.bound - 1) this.ground = { prices, cuts: this.cuts, least }
      this.raise(bound)
      report('pricing', { sets: this.columns.length, cuts: this.cuts.length })
      if (!this.letIn(found)) return true
      if (!this.isOpen) return true
    }
    return false
  }

  /** Cuts on three points, and the sets they call for, as long as they raise the bound and so many seconds are left. */
  tighten(seconds: number): void {
    let fruitless = 0
    for (let round = 0; round < CUT_ROUNDS && this.relaxed && this.isOpen; round += 1) {
      if (this.isOver || this.tools.limits.seconds() < seconds) return
      const broken = brokenCuts(this.columns, this.relaxed.chosen, this.cuts).slice(0, CUTS_AT_ONCE)
      if (broken.length === 0) return
      const before = this.bound
      this.cuts = [...this.cuts, ...broken]
      this.program.cut(broken)
      if (!this.generate()) return
      fruitless = this.bound > before * (1 + GAIN) ? 0 : fruitless + 1
      if (fruitless > FRUITLESS) return
    }
  }

  /** A better whole choice among the sets let in so far. */
  improve(seconds: number): void {
    const { program, incumbent, plane, report, shortcuts } = this.tools
    if (!this.relaxed || this.isOver || !this.isOpen || !shortcuts) return
    this.dive(this.columns, this.relaxed)
    const reduced = reducedCosts(this.columns, pricesOf(this.relaxed), this.cuts)
    const order = [...this.columns.keys()].sort((a, b) => (reduced[a] as number) - (reduced[b] as number) || a - b)
    const columns = order.slice(0, QUICK * plane.x.length).map((place) => this.columns[place] as Column)
    const { chosen } = program.whole(this.problem(columns, []), incumbent.cost, seconds)
    if (chosen) incumbent.offer(chosen.map((place) => columns[place] as Column))
    report('improving', { sets: columns.length })
  }

  /**
   * Brings the bound up to the cost, where time allows, in steps: is there a choice below a
   * ceiling not far above the bound? Only sets of so low a reduced cost are listed for the question;
   * a choice found answers it for good, none lifts the bound to the ceiling.
   */
  settle(): void {
    for (let step = STEP; this.isOpen && !this.isOver && step > SMALLEST_STEP; ) {
      const ceiling = Math.min(this.tools.incumbent.cost, Math.ceil(this.bound * (1 + step)))
      const listed = this.list(ceiling)
      if (listed && !this.askBelow(ceiling, listed)) return
      step *= listed ? GROWTH : 1 / SMALLER
    }
  }

  private get isOver(): boolean {
    const { cancelled, seconds } = this.tools.limits
    return cancelled() || seconds() <= 0
  }

  /** False when none of them is new. */
  private letIn(columns: readonly Column[]): boolean {
    const fresh = columns.filter(({ members }) => !this.known.has(String(members)))
    for (const { members } of fresh) this.known.add(String(members))
    this.columns.push(...fresh)
    this.program.add(fresh)
    return fresh.length > 0
  }

  private round(columns: readonly Column[], relaxed: Relaxed): void {
    const { incumbent, plane, shortcuts } = this.tools
    if (shortcuts) incumbent.offer(roundedChoice(plane, columns, relaxed))
  }

  private dive(columns: readonly Column[], from: Relaxed): void {
    const { program, incumbent, report, shortcuts } = this.tools
    if (this.isOver || !shortcuts) return
    const sets = dive({
      program,
      problem: this.problem(columns, this.cuts),
      from,
      further: (relaxed, taken) => {
        const prices = pricesOf(relaxed)
        return this.below({ ...prices, points: prices.points.map((price, at) => (taken.has(at) ? OUT : price)) }).found
      },
    })
    if (sets) incumbent.offer(sets)
    report('diving', { sets: columns.length })
  }

  private problem(columns: readonly Column[], cuts: readonly Cut[]) {
    const { x, singleCost } = this.tools.plane
    return { points: x.length, singleCost, columns, cuts, count: this.count }
  }

  /** Costs are whole. */
  private raise(bound: number): void {
    if (Number.isFinite(bound)) this.bound = Math.max(this.bound, Math.ceil(bound))
  }

  /** The sets that save most at these prices, no point in too many of them; and the least reduced cost of all. */
  private below(prices: Prices): { readonly found: readonly FoundSet[]; readonly least: number } {
    const cutsOf = cutPrices(this.cuts, prices.cuts)
    let kept: FoundSet[] = []
    let limit = -WORTHWHILE
    const complete = this.tools.search.each(prices.points, limit + prices.count, (found) => {
      // Cuts only make a set dearer.
      const reduced = found.reduced - prices.count - cutsOf(found.members)
      if (reduced < limit) kept.push({ ...found, reduced })
      if (kept.length >= 2 * LET_IN) {
        kept = kept.sort(byReduced).slice(0, LET_IN)
        limit = (kept[LET_IN - 1] as FoundSet).reduced
      }
      return limit + prices.count
    })
    kept.sort(byReduced)
    const least = complete ? (kept[0]?.reduced ?? -WORTHWHILE) : Number.NEGATIVE_INFINITY
    return { found: spreadOut(kept), least }
  }

  /** All sets that may be in a choice below the ceiling; null when they are too many, or time is up. */
  private list(ceiling: number): readonly Column[] | null {
    const { ground } = this
    if (!ground || this.isOver) return null
    const { plane, search, report } = this.tools
    const { prices, cuts, least } = ground
    const room = Math.max(0, ceiling - boundOf(plane, prices, this.count, least))
    const cutsOf = cutPrices(cuts, prices.cuts)
    const listed: Column[] = []
    const limit = room + prices.count
    const complete = search.each(prices.points, limit, ({ members, spread, reduced }) => {
      if (reduced - prices.count - cutsOf(members) < room) listed.push({ members, spread })
      return listed.length > LISTED ? Number.NEGATIVE_INFINITY : limit
    })
    if (!complete || listed.length > LISTED) return null
    report('listing', { sets: listed.length, ceiling })
    return listed
  }

  /** False when it found no answer in time. */
  private askBelow(ceiling: number, listed: readonly Column[]): boolean {
    const { plane, program, incumbent, limits, report } = this.tools
    const narrowed = narrowedList({
      plane,
      program,
      count: this.count,
      ceiling,
      columns: listed,
      cuts: this.ground?.cuts ?? [],
      onRelaxed: (columns, relaxed) => this.round(columns, relaxed),
    })
    const { columns, cuts, bound } = narrowed
    report('cutting', { sets: columns.length, cuts: cuts.length, ceiling })
    this.raise(Math.min(ceiling, bound))
    if (this.bound >= ceiling || !this.isOpen) return true
    if (this.isOver) return false
    const answer = program.whole(this.problem(columns, cuts), ceiling, limits.seconds())
    if (answer.chosen) incumbent.offer(answer.chosen.map((place) => columns[place] as Column))
    this.raise(Math.min(ceiling, incumbent.cost, answer.bound))
    report('finishing', { sets: columns.length, ceiling })
    return this.bound >= ceiling || !this.isOpen
  }
}

const byReduced = (a: FoundSet, b: FoundSet): number => a.reduced - b.reduced

function spreadOut(sorted: readonly FoundSet[]): readonly FoundSet[] {
  const uses = new Map<number, number>()
  return sorted.filter(({ members }) => {
    if (members.some((point) => (uses.get(point) ?? 0) >= SHARING)) return false
    for (const point of members) uses.set(point, (uses.get(point) ?? 0) + 1)
    return true
  })
}
