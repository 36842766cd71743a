/**
 * The tubes that could stand in a set under the ceiling of which a given tube, the anchor, is the
 * cheapest; of equal costs the one further left in x.
 *
 * Let r be the ceiling less the anchor's cost. Any companion p then keeps
 *   spread of the two + cost of p + cost of the others ≤ r,
 * and no other costs less than the anchor. Strata are looked through from the anchor's own
 * upward: the cheapest found below a stratum, and its floor where too few were found, bound the
 * others, which narrows the look into it, and tells when no set can be left at all.
 */
import type { CompanionBounds } from './companion-bounds'
import { FewLowest } from './few-lowest'
import type { Field } from './field'
import type { Terms } from './incumbent'
import type { Lanes } from './lanes'
import { admits } from './running'
import { sortOutward } from './sort-outward'
import { type SpreadScale, widestX, widestY, xSpread, ySpread } from './spread-cost'

const FEW = 256

export class Companions {
  /** How many there are; fewer than a set needs: none is possible. */
  count = 0
  private tubes = new Int32Array(FEW)
  private spread = new Float64Array(FEW)
  /** Of each lane, the first slot behind the anchor in x. */
  private readonly next: Int32Array
  private readonly others: number
  private readonly cheapest: FewLowest
  private readonly lanes: Lanes
  private readonly scale: SpreadScale
  private anchor = 0
  private anchorCost = 0
  private anchorX = 0
  private anchorY = 0
  /** No companion of the stratum in hand lies beyond. */
  private bottom = 0
  private top = 0

  constructor(
    private readonly field: Field,
    private readonly terms: Terms,
  ) {
    this.lanes = field.lanes
    this.scale = terms.scale
    this.next = this.lanes.start.slice()
    this.others = terms.count - 1
    this.cheapest = new FewLowest(this.others)
  }

  /** Back to the lowest x. */
  rewind(): void {
    this.next.set(this.lanes.start)
  }

  /** To the next tube in x; every one has to be told. */
  advance(tube: number): void {
    const lane = this.lanes.laneOf[tube] as number
    this.next[lane] = (this.next[lane] as number) + 1
  }

  /** To any tube. */
  turnTo(tube: number): void {
    const { start, tube: inSlot } = this.lanes
    for (let lane = 0; lane < this.next.length - 1; lane += 1) {
      let low = start[lane] as number
      for (let high = start[lane + 1] as number; low < high; ) {
        const middle = (low + high) >> 1
        if ((inSlot[middle] as number) <= tube) low = middle + 1
        else high = middle
      }
      this.next[lane] = low
    }
  }

  /** From the strata up to the last, in sets that count no more than the ceiling; the tube last told is the anchor. */
  gather(anchor: number, last: number, ceiling: number): void {
    const { field, lanes, others } = this
    const cheapest = this.cheapest.values
    const own = field.cost[anchor] as number
    const room = ceiling - own
    this.settle(anchor, own)
    let stratum = 0
    while (stratum < last && (lanes.floor[stratum + 1] as number) <= own) stratum += 1
    for (; stratum <= last; stratum += 1) {
      const floor = Math.max(own, lanes.floor[stratum] as number)
      let beside = 0
      for (let nth = 0; nth < others - 1; nth += 1) beside += Math.min(cheapest[nth] as number, floor)
      if (beside + Math.min(cheapest[others - 1] as number, floor) > room) {
        this.count = 0
        return
      }
      if (beside + floor > room) return
      this.gatherIn(stratum, room - beside, floor)
    }
  }

  private settle(anchor: number, cost: number): void {
    this.anchor = anchor
    this.anchorCost = cost
    this.anchorX = this.field.x[anchor] as number
    this.anchorY = this.field.y[anchor] as number
    this.count = 0
    this.cheapest.clear()
  }

  /** `rest`: spread and cost of a companion do not exceed it. */
  private gatherIn(stratum: number, rest: number, floor: number): void {
    const { lanes, scale, anchorY } = this
    const { low, high, firstLane } = lanes
    const slack = rest - floor
    const ratio = 1 + Math.min(widestY(scale, slack), this.terms.yLimit / 10_000)
    const bottom = anchorY / ratio - 1
    const top = anchorY * ratio + 1
    this.bottom = bottom
    this.top = top
    const end = firstLane[stratum + 1] as number
    const leftToo = (lanes.roof[stratum] as number) > this.anchorCost
    for (let lane = this.firstReaching(bottom, stratum); lane < end && (low[lane] as number) <= top; lane += 1) {
      const apart = slack - this.ySpreadTo(low[lane] as number, high[lane] as number)
      if (apart >= 0) this.look(lane, rest, Math.min(widestX(scale, apart), this.terms.xLimit), leftToo)
    }
  }

  /** The lowest lane of a stratum that reaches up to `bottom`. */
  private firstReaching(bottom: number, stratum: number): number {
    const { high, firstLane, laneOf } = this.lanes
    let from = firstLane[stratum] as number
    let until = firstLane[stratum + 1] as number
    const own = laneOf[this.anchor] as number
    if (own >= from && own < until) {
      // In its own stratum mostly its own lane.
      until = own
      while (until > from && (high[until - 1] as number) >= bottom) until -= 1
      return until
    }
    while (from < until) {
      const middle = (from + until) >> 1
      if ((high[middle] as number) < bottom) from = middle + 1
      else until = middle
    }
    return from
  }

  /** To the nearest y of a lane. */
  private ySpreadTo(low: number, high: number): number {
    const { anchorY, scale } = this
    if (low > anchorY) return ySpread(scale, anchorY, low)
    return high < anchorY ? ySpread(scale, high, anchorY) : 0
  }

  /** From the anchor on in both directions of x; to the left all cost more than it or are no companions. */
  private look(lane: number, rest: number, reach: number, leftToo: boolean): void {
    const { x, start } = this.lanes
    const { anchorX } = this
    const here = this.next[lane] as number
    for (let slot = here, end = start[lane + 1] as number; slot < end; slot += 1) {
      if ((x[slot] as number) - anchorX > reach) break
      this.consider(slot, rest)
    }
    if (!leftToo) return
    for (let slot = here - 1, first = start[lane] as number; slot >= first; slot -= 1) {
      if (anchorX - (x[slot] as number) > reach) break
      this.consider(slot, rest)
    }
  }

  private consider(slot: number, rest: number): void {
    const { lanes, field, scale, anchorY } = this
    const y = lanes.y[slot] as number
    if (y < this.bottom || y > this.top) return
    const cost = lanes.cost[slot] as number
    if (cost < this.anchorCost || cost > rest) return
    const tube = lanes.tube[slot] as number
    if (cost === this.anchorCost && tube <= this.anchor) return
    const range = Math.abs((lanes.x[slot] as number) - this.anchorX)
    const spread = xSpread(scale, range) + (y > anchorY ? ySpread(scale, anchorY, y) : ySpread(scale, y, anchorY))
    if (spread + cost > rest) return
    if ((lanes.twinRank[tube] as number) >= field.mostTwins || !admits(field, tube)) return
    this.add(tube, spread, cost)
  }

  private add(tube: number, spread: number, cost: number): void {
    if (this.count === this.tubes.length) this.grow()
    this.tubes[this.count] = tube
    this.spread[this.count] = spread
    this.count += 1
    this.cheapest.add(cost)
  }

  private grow(): void {
    const tubes = new Int32Array(2 * this.count)
    const spread = new Float64Array(2 * this.count)
    tubes.set(this.tubes)
    spread.set(this.spread)
    this.tubes = tubes
    this.spread = spread
  }

  /** Of the sets with those gathered. */
  bound(bounds: CompanionBounds): void {
    sortOutward(this.tubes, this.spread, this.count)
    bounds.take(this.tubes, this.spread, this.count, this.anchorCost)
  }
}
