/**
 * The best set that has one tube, the anchor, as its first in the order of x, exactly.
 *
 * The spread of a set depends only on the box it spans in x and y, and never falls as the
 * box grows. So of the best set S with box B, the anchor and the cheapest others in B are
 * at least as good as S, and are S. It is enough to look into boxes, not at sets:
 *
 *   let tubes near the anchor in by rising x (the slab);
 *   for each one just let in, all boxes that hold it and the anchor: lower edge of y
 *   falling, upper edge rising, until the spread and the cheapest of the slab exceed the
 *   ceiling, or the box holds the cheapest of the slab.
 */
import { Cheapest } from './cheapest'
import type { Crowd } from './crowd'
import type { Incumbent } from './incumbent'
import { NearTubes } from './near-tubes'
import { xSpread, ySpread } from './spread-cost'
import { withinSpend } from './within-spend'

export class AnchorBoxes {
  private readonly others: number
  private readonly slab: number[] = []
  private readonly inSlab: Cheapest
  private readonly pool: number[] = []
  private readonly inPool: Cheapest
  private readonly inCore: Cheapest
  private readonly inBox: Cheapest
  private readonly nearTubes: NearTubes
  private anchor = 0

  constructor(
    private readonly crowd: Crowd,
    private readonly incumbent: Incumbent,
  ) {
    this.others = incumbent.terms.count - 1
    this.inSlab = new Cheapest(crowd, this.others)
    this.inPool = new Cheapest(crowd, this.others)
    this.inCore = new Cheapest(crowd, this.others)
    this.inBox = new Cheapest(crowd, this.others)
    this.nearTubes = new NearTubes(crowd, incumbent)
  }

  /** `near` is used up. No set from the anchor counts less than `least`. */
  search(anchor: number, near: number[], least: number): void {
    this.anchor = anchor
    if (this.onlyLaterMarks(near, least)) return
    this.nearTubes.keep(anchor, near)
    if (near.length === 0 || this.onlyLaterMarks(near, this.nearTubes.least)) return
    if (this.others === 1) this.pairs(near)
    else this.slabs(near)
  }

  /** At best these tie with the best set, and each of them has a later mark than its first. */
  private onlyLaterMarks(near: readonly number[], least: number): boolean {
    const { best, ceiling } = this.incumbent
    if (best === null || least < ceiling) return false
    const { place } = this.crowd
    const first = best.places[0] as number
    return (place[this.anchor] as number) > first && near.every((member) => (place[member] as number) > first)
  }

  private pairs(near: readonly number[]): void {
    for (const other of near) if (this.affordable([other])) this.incumbent.offer(this.crowd, [this.anchor, other])
  }

  private slabs(kept: readonly number[]): void {
    const { x } = this.crowd
    this.slab.length = 0
    this.inSlab.clear()
    for (let from = 0; from < kept.length; ) {
      let until = from
      for (; until < kept.length && x[kept[until] as number] === x[kept[from] as number]; until += 1) {
        this.insert(kept[until] as number)
      }
      if (this.inSlab.full) {
        for (let at = from; at < until; at += 1) this.boxesThrough(kept[at] as number)
      }
      from = until
    }
  }

  private insert(member: number): void {
    const { y } = this.crowd
    const { slab } = this
    let to = slab.length
    for (; to > 0 && (y[slab[to - 1] as number] as number) > (y[member] as number); to -= 1)
      slab[to] = slab[to - 1] as number
    slab[to] = member
    this.inSlab.add(member)
  }

  /** Boxes from the anchor to `member` in x. */
  private boxesThrough(member: number): void {
    const { x, y, cost } = this.crowd
    const [own, its] = [y[this.anchor] as number, y[member] as number]
    const [bottom, top] = [Math.min(own, its), Math.max(own, its)]
    const range = xSpread(this.incumbent.terms.scale, (x[member] as number) - (x[this.anchor] as number))
    const alone = range + (cost[this.anchor] as number)
    if (!this.fits(alone + this.inSlab.totalWith(member), bottom, top)) return
    this.fill(member, { bottom, top, ends: alone + (cost[member] as number) })
    if (!this.inPool.full) return
    const fixed = alone + this.inPool.totalWith(member)
    this.falling({ bottom, top, fixed, ends: alone + (cost[member] as number), left: this.others - 1 })
  }

  /** The pool: of the slab, those that can stand in one set with anchor and member. */
  private fill(member: number, { bottom, top, ends }: Pick<Edges, 'bottom' | 'top' | 'ends'>): void {
    const { slab, pool, inPool, inSlab } = this
    const { y, cost } = this.crowd
    const points = ends + inSlab.firstTotal(this.others - 2)
    pool.length = 0
    inPool.clear()
    for (let at = 0; at < slab.length; at += 1) {
      const other = slab[at] as number
      const its = y[other] as number
      const fits = this.fits(points + (cost[other] as number), Math.min(bottom, its), Math.max(top, its))
      if (!fits && other !== member) continue
      pool.push(other)
      inPool.add(other)
    }
  }

  /** Lower edge of y falling. A set needs a tube on each edge. */
  private falling(start: Edges): void {
    const { pool, inCore, inPool } = this
    const { y, cost } = this.crowd
    const { top } = start
    let low = this.firstAt(start.bottom)
    const high = this.firstAt(top + 1)
    inCore.clear()
    for (let at = low; at < high; at += 1) inCore.add(pool[at] as number)
    for (let edges = start; this.fits(edges.fixed, edges.bottom, top); ) {
      if (edges.left >= 0 && this.fits(edges.ends + inPool.firstTotal(edges.left), edges.bottom, top)) {
        if (this.rising(edges, low, high) && inCore.full && inCore.same(inPool)) return
      }
      if (low === 0) return
      const bottom = y[pool[low - 1] as number] as number
      let least = Number.POSITIVE_INFINITY
      for (; low > 0 && y[pool[low - 1] as number] === bottom; low -= 1) {
        inCore.add(pool[low - 1] as number)
        least = Math.min(least, cost[pool[low - 1] as number] as number)
      }
      edges = { ...start, bottom, ends: start.ends + least, left: start.left - 1 }
    }
  }

  private fits(points: number, lowest: number, highest: number): boolean {
    return points + ySpread(this.incumbent.terms.scale, lowest, highest) <= this.incumbent.ceiling
  }

  /** Upper edge rising. False where a set was too dear, so that a wider box may still be of use. */
  private rising({ bottom, top, fixed, ends, left }: Edges, low: number, high: number): boolean {
    const { pool, inBox, inPool } = this
    const { y, cost } = this.crowd
    inBox.copy(this.inCore)
    let affordable = true
    let through = ends + inPool.firstTotal(left)
    for (let until = high, upper = top; this.fits(fixed, bottom, upper); ) {
      if (inBox.full && this.fits(through, bottom, upper)) affordable = this.offerBox(low, until)
      if (until === pool.length || left === 0 || (affordable && inBox.full && inBox.same(inPool))) return affordable
      upper = y[pool[until] as number] as number
      let least = Number.POSITIVE_INFINITY
      for (; until < pool.length && y[pool[until] as number] === upper; until += 1) {
        inBox.add(pool[until] as number)
        least = Math.min(least, cost[pool[until] as number] as number)
      }
      through = ends + least + inPool.firstTotal(left - 1)
    }
    return affordable
  }

  private offerBox(low: number, until: number): boolean {
    const { members } = this.inBox
    if (this.affordable(members)) {
      this.incumbent.offer(this.crowd, [this.anchor, ...members])
      return true
    }
    const { cost, price } = this.crowd
    const chosen = withinSpend(this.crowd, this.pool.slice(low, until), {
      count: this.others,
      spend: this.incumbent.terms.priceCap - (price[this.anchor] as number),
      mostCost: this.incumbent.ceiling - (cost[this.anchor] as number),
    })
    if (chosen) this.incumbent.offer(this.crowd, [this.anchor, ...chosen])
    return false
  }

  private affordable(members: readonly number[]): boolean {
    const { priceCap } = this.incumbent.terms
    if (priceCap === Number.POSITIVE_INFINITY) return true
    const { price } = this.crowd
    let total = price[this.anchor] as number
    for (const member of members) total += price[member] as number
    return total <= priceCap
  }

  /** Place in the pool of the first tube at or above a y. */
  private firstAt(y: number): number {
    let [low, high] = [0, this.pool.length]
    while (low < high) {
      const middle = (low + high) >> 1
      if ((this.crowd.y[this.pool[middle] as number] as number) < y) low = middle + 1
      else high = middle
    }
    return low
  }
}

type Edges = {
  readonly bottom: number
  readonly top: number
  /** Points that every box of this pass has. */
  readonly fixed: number
  /** Points of the tubes on the edges so far and of their x spread; and how many tubes are left to choose. */
  readonly ends: number
  readonly left: number
}
