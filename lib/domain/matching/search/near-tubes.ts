/**
 * Which tubes near an anchor could stand in a set with it under the ceiling.
 *
 * Of the tubes of such a set let p be the one furthest from the anchor, s the spread of the
 * two. All others lie within s of it, so the set counts at least
 *   s + anchor + the cheapest others within s,
 * with a given tube among them where that one must be in. The lowest of this over all s at
 * or beyond the tube's own spread bounds every set it can be in. What exceeds the ceiling is
 * dropped, and the rest looked at again without it.
 */
import { Cheapest } from './cheapest'
import type { Crowd } from './crowd'
import type { Incumbent } from './incumbent'
import { sortedBy } from './sorted-by'
import { spreadCost } from './spread-cost'

const FEW = 64

export class NearTubes {
  /** No set from the anchor counts less, of those the last look left. */
  least = Number.POSITIVE_INFINITY
  private readonly within: Cheapest
  private readonly spread: Float64Array
  /** Lowest bound from each tube on outward; and without the dearest of the cheapest. */
  private bounds = new Float64Array(FEW)
  private boundsLess = new Float64Array(FEW)
  private readonly others: number
  private anchor = 0

  constructor(
    private readonly crowd: Crowd,
    private readonly incumbent: Incumbent,
  ) {
    this.others = incumbent.terms.count - 1
    this.within = new Cheapest(crowd, this.others)
    this.spread = new Float64Array(crowd.size)
  }

  /** Leaves those in `near`, in the order of the crowd; none when no set is left. */
  keep(anchor: number, near: number[]): void {
    this.anchor = anchor
    if (near.length > this.bounds.length) {
      this.bounds = new Float64Array(2 * near.length)
      this.boundsLess = new Float64Array(2 * near.length)
    }
    for (const member of near) this.spread[member] = this.pairSpread(member)
    sortedBy(near, this.spread)
    for (let before = Number.POSITIVE_INFINITY; near.length < before; ) {
      before = near.length
      if (before < this.others) near.length = 0
      else this.drop(near)
    }
    sortedBy(near, null)
  }

  private pairSpread(member: number): number {
    const { x, y } = this.crowd
    const [own, its] = [y[this.anchor] as number, y[member] as number]
    const range = Math.abs((x[member] as number) - (x[this.anchor] as number))
    return spreadCost(this.incumbent.terms.scale, range, Math.min(own, its), Math.max(own, its))
  }

  private drop(outward: number[]): void {
    this.bound(outward)
    const { cost } = this.crowd
    const room = this.incumbent.ceiling - (cost[this.anchor] as number)
    let kept = 0
    for (let at = 0; at < outward.length; at += 1) {
      const member = outward[at] as number
      if ((this.bounds[at] as number) > room) continue
      if ((this.boundsLess[at] as number) + (cost[member] as number) > room) continue
      outward[kept] = member
      kept += 1
    }
    outward.length = kept
  }

  private bound(outward: readonly number[]): void {
    const { within, others, bounds, boundsLess } = this
    const { cost } = this.crowd
    within.clear()
    for (let at = 0; at < outward.length; at += 1) {
      const member = outward[at] as number
      within.add(member)
      const bound = within.full ? (this.spread[member] as number) + within.total : Number.POSITIVE_INFINITY
      bounds[at] = bound
      boundsLess[at] = within.full ? bound - (cost[within.members[others - 1] as number] as number) : bound
    }
    for (let at = outward.length - 2; at >= 0; at -= 1) {
      bounds[at] = Math.min(bounds[at] as number, bounds[at + 1] as number)
      boundsLess[at] = Math.min(boundsLess[at] as number, boundsLess[at + 1] as number)
    }
    this.least = (bounds[0] as number) + (cost[this.anchor] as number)
  }
}
