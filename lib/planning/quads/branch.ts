/**
 * The choice of sets when their number lies in a range: how little it can
 * cost, and the whole choices met on the way. `plan-sets.ts` tells the steps.
 */
import type { Plane } from '@/lib/domain/pairing/plane'
import { dive } from './dive'
import type { Incumbent } from './incumbent'
import { boundOf, type Prices, pricesOf, reducedCosts } from './price-bound'
import { roundedChoice } from './rounded-choice'
import {
  type Column,
  type Count,
  type Cut,
  cutsByPoint,
  cutsHeld,
  type Limits,
  type Relaxed,
  type SetProgram,
} from './set-program'
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
const LISTED = 60_000
const CUT_ROUNDS = 40
/** First ceiling above the bound, as a share of it. */
const STEP = 0.004
/** Of that share, from ceiling to ceiling. */
const GROWTH = 1.25
/** Sets for each tube that a quick whole choice is made of. */
const QUICK = 12

export type Tools = {
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
  private cuts: readonly Cut[] = []

  constructor(
    private readonly tools: Tools,
    private readonly count: Count,
    private columns: Column[],
  ) {}

  get isOpen(): boolean {
    return this.bound < this.tools.incumbent.cost
  }

  split(at: number): readonly [Branch, Branch] {
    const { least, most } = this.count
    const halves = [
      { least, most: at },
      { least: at + 1, most },
    ].map((count) => {
      const half = new Branch(this.tools, count, [...this.columns])
      half.bound = this.bound
      return half
    })
    return halves as unknown as [Branch, Branch]
  }

  /** Lets sets in until none of all there are would lower the relaxed cost; false when stopped before. */
  generate(): boolean {
    const { plane, report } = this.tools
    while (!this.isOver) {
      const relaxed = this.solve()
      if (!relaxed) return false
      this.round(relaxed)
      const prices = pricesOf(relaxed)
      const { found, least } = this.below(prices)
      this.raise(boundOf(plane, prices, this.count, least))
      report('pricing', { sets: this.columns.length })
      if (found.length === 0) return true
      this.columns.push(...found)
      if (!this.isOpen) return true
    }
    return false
  }

  /** A better whole choice among the sets let in so far. */
  improve(seconds: number): void {
    const { program, incumbent, plane, report, shortcuts } = this.tools
    if (!this.relaxed || this.isOver || !this.isOpen || !shortcuts) return
    this.dive()
    const reduced = reducedCosts(this.columns, pricesOf(this.relaxed), this.cuts)
    const order = [...this.columns.keys()].sort((a, b) => (reduced[a] as number) - (reduced[b] as number) || a - b)
    const columns = order.slice(0, QUICK * plane.x.length).map((place) => this.columns[place] as Column)
    const { chosen } = program.whole(this.problem(columns), incumbent.cost, seconds)
    if (chosen) incumbent.offer(chosen.map((place) => columns[place] as Column))
    report('improving', { sets: columns.length })
  }

  private round(relaxed: Relaxed): void {
    const { incumbent, plane, shortcuts } = this.tools
    if (shortcuts) incumbent.offer(roundedChoice(plane, this.columns, relaxed))
  }

  private dive(): void {
    const { program, incumbent, report, shortcuts } = this.tools
    if (!this.relaxed || this.isOver || !shortcuts) return
    const sets = dive({
      program,
      problem: this.problem(this.columns),
      from: this.relaxed,
      further: (relaxed, taken) => {
        const prices = pricesOf(relaxed)
        return this.below({ ...prices, points: prices.points.map((price, at) => (taken.has(at) ? OUT : price)) }).found
      },
    })
    if (sets) incumbent.offer(sets)
    report('diving', { sets: this.columns.length })
  }

  /**
   * Brings the bound up to the cost, where time allows, in steps: is there a choice below a
   * ceiling not far above the bound? Only sets of so low a reduced cost are listed for the question;
   * a choice found answers it for good, none lifts the bound to the ceiling.
   */
  settle(): void {
    for (let step = STEP; this.isOpen && !this.isOver; step *= GROWTH) {
      const ceiling = Math.min(this.tools.incumbent.cost, Math.ceil(this.bound * (1 + step)))
      if (!this.list(ceiling) || !this.askBelow(ceiling)) return
    }
  }

  /** False when it found no answer in time. */
  private askBelow(ceiling: number): boolean {
    for (let round = 0; round < CUT_ROUNDS && this.bound < ceiling; round += 1) {
      const going = round === 0 ? this.tighten(ceiling) : this.cut(ceiling)
      if (this.isOver) return false
      if (!going) break
    }
    if (this.bound < ceiling) this.dive()
    return this.bound >= ceiling || this.finish(ceiling)
  }

  private get isOver(): boolean {
    const { cancelled, seconds } = this.tools.limits
    return cancelled() || seconds() <= 0
  }

  private solve(): Relaxed | null {
    this.relaxed = this.tools.program.relaxed(this.problem(this.columns))
    return this.relaxed
  }

  private problem(columns: readonly Column[]) {
    const { x, singleCost } = this.tools.plane
    return { points: x.length, singleCost, columns, cuts: this.cuts, count: this.count }
  }

  /** Costs are whole. */
  private raise(bound: number): void {
    if (Number.isFinite(bound)) this.bound = Math.max(this.bound, Math.ceil(bound))
  }

  /** The sets that save most at these prices, no point in too many of them; and the least reduced cost of all. */
  private below(prices: Prices): { readonly found: readonly FoundSet[]; readonly least: number } {
    let kept: FoundSet[] = []
    let limit = -WORTHWHILE
    const complete = this.tools.search.each(prices.points, limit + prices.count, (found) => {
      kept.push({ ...found, reduced: found.reduced - prices.count })
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

  /**
   * All sets that may be in a choice below the ceiling, at the latest prices. The prices are good
   * for that only once no set has a reduced cost below 0: those that have are let in first. False
   * when they are too many, or time is up.
   */
  private list(ceiling: number): boolean {
    const { plane, report } = this.tools
    while (this.relaxed && !this.isOver) {
      const prices = pricesOf(this.relaxed)
      const room = ceiling - boundOf(plane, prices, this.count, -WORTHWHILE)
      const within = this.within(prices, Math.max(room, 0))
      if (!within) return false
      const known = new Set(this.columns.map(({ members }) => String(members)))
      const missed = within.filter(({ members, reduced }) => reduced < -WORTHWHILE && !known.has(String(members)))
      if (missed.length > 0) {
        this.columns.push(...spreadOut(missed.toSorted(byReduced)))
        this.solve()
        continue
      }
      const least = within.reduce((a, { reduced }) => Math.min(a, reduced), -WORTHWHILE)
      this.raise(Math.min(ceiling, boundOf(plane, prices, this.count, least)))
      if (this.bound >= ceiling) return true
      this.columns = within.map(({ members, spread }) => ({ members, spread }))
      report('listing', { sets: within.length, ceiling })
      return true
    }
    return false
  }

  /** All sets of a reduced cost below the room, cuts counted; null when they are too many. */
  private within(prices: Prices, room: number): readonly FoundSet[] | null {
    const byPoint = cutsByPoint(this.cuts)
    const limit = room + prices.count
    const listed: FoundSet[] = []
    const complete = this.tools.search.each(prices.points, limit, (found) => {
      const cuts = cutsHeld(found.members, byPoint).reduce((sum, cut) => sum + (prices.cuts[cut] as number), 0)
      const reduced = found.reduced - prices.count - cuts
      if (reduced < room) listed.push({ ...found, reduced })
      return listed.length > LISTED ? Number.NEGATIVE_INFINITY : limit
    })
    return complete && listed.length <= LISTED ? listed : null
  }

  /** One round of cuts; false when there are none to make. */
  private cut(ceiling: number): boolean {
    const broken = this.relaxed ? brokenCuts(this.columns, this.relaxed.chosen, this.cuts) : []
    this.cuts = [...this.cuts, ...broken]
    return broken.length > 0 && this.tighten(ceiling)
  }

  /** Solves, and lets sets go that are hopeless below the ceiling; false when stopped. */
  private tighten(ceiling: number): boolean {
    const { plane, report } = this.tools
    const relaxed = this.solve()
    if (!relaxed) return false
    this.round(relaxed)
    const prices = pricesOf(relaxed)
    const reduced = reducedCosts(this.columns, prices, this.cuts)
    const least = reduced.reduce((a, b) => Math.min(a, b), 0)
    const base = boundOf(plane, prices, this.count, least)
    this.raise(Math.min(ceiling, base))
    const kept = [...this.columns.keys()].filter((place) => base + (reduced[place] as number) < ceiling)
    // The columns stay as the ground for the next ceiling's prices.
    if (kept.length === 0) this.raise(ceiling)
    if (this.bound >= ceiling) return true
    this.columns = kept.map((place) => this.columns[place] as Column)
    this.relaxed = { ...relaxed, chosen: Float64Array.from(kept, (place) => relaxed.chosen[place] as number) }
    report('cutting', { sets: kept.length, cuts: this.cuts.length, ceiling })
    return true
  }

  private finish(ceiling: number): boolean {
    const { program, incumbent, limits, report } = this.tools
    const { chosen, bound } = program.whole(this.problem(this.columns), ceiling, limits.seconds())
    if (chosen) incumbent.offer(chosen.map((place) => this.columns[place] as Column))
    this.raise(Math.min(ceiling, incumbent.cost, bound))
    report('finishing', { sets: this.columns.length, ceiling })
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
