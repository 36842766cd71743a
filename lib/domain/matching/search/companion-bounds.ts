/**
 * What sets of an anchor and some of its companions count at least.
 *
 * Of the companions in a set let p be the one furthest from the anchor, s the spread of the two.
 * The others lie within s of it, so the set counts at least
 *   s + anchor + the cheapest companions within s.
 * The lowest of this over all s at or beyond a companion's own bounds every set it can be in.
 */
import { FewLowest } from './few-lowest'
import type { Figures } from './incumbent'

export class CompanionBounds {
  /** No set counts less; the companions up to this one gave it. */
  least = Number.POSITIVE_INFINITY
  private leastAt = 0
  private tubes: Int32Array = new Int32Array()
  private count = 0
  /** Of sets with each companion: lowest bound, and the same without the cost of one of its tubes. */
  private bounds = new Float64Array()
  private boundsLess = new Float64Array()
  private readonly cheapest: FewLowest

  constructor(
    private readonly figures: Figures,
    private readonly others: number,
  ) {
    this.cheapest = new FewLowest(others)
  }

  /** The first so many tubes by rising spread from the anchor. They are only lent. */
  take(tubes: Int32Array, spread: Float64Array, count: number, anchorCost: number): void {
    this.tubes = tubes
    this.count = count
    if (this.bounds.length < tubes.length) {
      this.bounds = new Float64Array(tubes.length)
      this.boundsLess = new Float64Array(tubes.length)
    }
    this.outward(spread, anchorCost)
    this.inward()
  }

  private outward(spread: Float64Array, anchorCost: number): void {
    const { count, tubes, bounds, boundsLess, others, cheapest } = this
    const { cost } = this.figures
    cheapest.clear()
    this.least = Number.POSITIVE_INFINITY
    let beside = Number.POSITIVE_INFINITY
    for (let at = 0; at < count; at += 1) {
      if (cheapest.add(cost[tubes[at] as number] as number)) {
        beside = anchorCost
        for (let nth = 0; nth < others - 1; nth += 1) beside += cheapest.values[nth] as number
      }
      boundsLess[at] = (spread[at] as number) + beside
      bounds[at] = (boundsLess[at] as number) + (cheapest.values[others - 1] as number)
      if ((bounds[at] as number) < this.least) {
        this.least = bounds[at] as number
        this.leastAt = at
      }
    }
  }

  private inward(): void {
    const { bounds, boundsLess } = this
    for (let at = this.count - 2; at >= 0; at -= 1) {
      bounds[at] = Math.min(bounds[at] as number, bounds[at + 1] as number)
      boundsLess[at] = Math.min(boundsLess[at] as number, boundsLess[at + 1] as number)
    }
  }

  /** Mark of the earliest companion. */
  earliest(): number {
    const { place } = this.figures
    let first = Number.POSITIVE_INFINITY
    for (let at = 0; at < this.count; at += 1) first = Math.min(first, place[this.tubes[at] as number] as number)
    return first
  }

  /** The cheapest of those that gave the lowest bound. */
  nearest(): number[] {
    const { cost, place } = this.figures
    return Array.from(this.tubes.subarray(0, this.leastAt + 1))
      .sort((a, b) => (cost[a] as number) - (cost[b] as number) || (place[a] as number) - (place[b] as number))
      .slice(0, this.others)
  }

  /** Companions that may be in a set which does not exceed the ceiling. */
  within(ceiling: number): number[] {
    const left: number[] = []
    for (let at = 0; at < this.count; at += 1) {
      const tube = this.tubes[at] as number
      if ((this.bounds[at] as number) > ceiling) continue
      if ((this.boundsLess[at] as number) + (this.figures.cost[tube] as number) <= ceiling) left.push(tube)
    }
    return left
  }
}
