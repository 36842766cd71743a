/**
 * Leaves of a crowd only the tubes that can stand in a set under the ceiling.
 *
 * Of such a set let the anchor be the cheapest tube, by cost and then mark. The others cost
 * no less each, so count · its cost does not exceed the ceiling, and of any other tube p
 *   spread of the two + p's cost + (count − 1) · the anchor's cost
 * does not either. Only cheap tubes can be anchors, and the dearer the anchor, the closer
 * its companions: that is why so few are left. near-tubes.ts narrows those of each anchor
 * further. No tube of a set under the ceiling is ever dropped.
 */
import { type BandGrid, type Bands, bandGrid, bandsOf } from './bands'
import { type Crowd, picked } from './crowd'
import type { Incumbent } from './incumbent'
import { NearTubes } from './near-tubes'
import { spreadCost, widestX, widestY, ySpread } from './spread-cost'

export function sieved(crowd: Crowd, incumbent: Incumbent): Crowd {
  return new Sieve(crowd, incumbent).left()
}

class Sieve {
  private readonly grid: BandGrid
  private readonly bands: Bands
  /** First slot of each band that lies behind the anchor in x. */
  private readonly next: Int32Array
  private readonly nearTubes: NearTubes
  private readonly fits: Uint8Array
  private readonly near: Int32Array
  private nearCount = 0

  constructor(
    private readonly crowd: Crowd,
    private readonly incumbent: Incumbent,
  ) {
    this.grid = bandGrid(crowd, this.height())
    this.bands = bandsOf(crowd, this.grid, new Uint8Array(crowd.size), 0)
    this.next = this.bands.start.slice()
    this.nearTubes = new NearTubes(crowd, incumbent)
    this.fits = new Uint8Array(crowd.size)
    this.near = new Int32Array(crowd.size)
  }

  left(): Crowd {
    const { crowd, grid, next, fits } = this
    const { count } = this.incumbent.terms
    for (let anchor = 0; anchor < crowd.size; anchor += 1) {
      const band = grid.bandOf[anchor] as number
      next[band] = (next[band] as number) + 1
      const slack = this.incumbent.ceiling - count * (crowd.cost[anchor] as number)
      if (slack >= 0) this.companions(anchor, slack)
    }
    const kept = new Int32Array(crowd.size)
    let size = 0
    for (let at = 0; at < crowd.size; at += 1) if (fits[at] === 1) kept[size++] = at
    return picked(crowd, kept.subarray(0, size), null)
  }

  /** As high as the anchors reach in the middle of them: some look into more than three bands, most into two or three. */
  private height(): number {
    const { crowd, incumbent } = this
    const { count, scale, yLimit } = incumbent.terms
    let [slack, anchors, strongest] = [0, 0, 0]
    for (let at = 0; at < crowd.size; at += 1) {
      const own = incumbent.ceiling - count * (crowd.cost[at] as number)
      strongest = Math.max(strongest, crowd.y[at] as number)
      if (own < 0) continue
      slack += own
      anchors += 1
    }
    const ratio = Math.min(widestY(scale, anchors === 0 ? 0 : slack / anchors), yLimit / 10_000)
    return strongest * ratio + 1
  }

  private companions(anchor: number, slack: number): void {
    const { fits, near } = this
    this.gather(anchor, slack)
    if (this.nearCount < this.incumbent.terms.count - 1) return
    const members = Array.from(near.subarray(0, this.nearCount))
    this.nearTubes.keep(anchor, members)
    if (members.length === 0) return
    fits[anchor] = 1
    for (const member of members) fits[member] = 1
  }

  private gather(anchor: number, slack: number): void {
    const { crowd, grid } = this
    const { scale, xLimit, yLimit } = this.incumbent.terms
    const own = crowd.y[anchor] as number
    const ratio = 1 + Math.min(widestY(scale, slack), yLimit / 10_000)
    const last = bandAt(grid, own * ratio + 1)
    this.nearCount = 0
    for (let band = bandAt(grid, own / ratio - 1); band <= last; band += 1) {
      const apart = slack - this.ySpreadTo(band, own)
      if (apart >= 0) this.gatherIn(band, anchor, Math.min(widestX(scale, apart), xLimit))
    }
  }

  /** To the nearest y of a band, at the least. */
  private ySpreadTo(band: number, y: number): number {
    const { bottom, tall } = this.grid
    const low = bottom + band * tall - 1
    const high = low + tall + 2
    if (y < low) return ySpread(this.incumbent.terms.scale, y, low)
    return y > high ? ySpread(this.incumbent.terms.scale, high, y) : 0
  }

  /** From the anchor on in both directions of x. */
  private gatherIn(band: number, anchor: number, reach: number): void {
    const { x, start } = this.bands
    const own = this.crowd.x[anchor] as number
    const here = this.next[band] as number
    let from = here
    for (const low = start[band] as number; from > low && own - (x[from - 1] as number) <= reach; from -= 1);
    let until = here
    for (const high = start[band + 1] as number; until < high && (x[until] as number) - own <= reach; until += 1);
    if (from < until) this.look(from, until, anchor)
  }

  private look(from: number, until: number, anchor: number): void {
    const { crowd, near } = this
    const { x, y, cost, members } = this.bands
    const { ceiling, terms } = this.incumbent
    const own = crowd.cost[anchor] as number
    const [ownX, ownY, ownPlace] = [crowd.x[anchor] as number, crowd.y[anchor] as number, crowd.place[anchor] as number]
    const rest = ceiling - (terms.count - 1) * own
    let found = this.nearCount
    for (let slot = from; slot < until; slot += 1) {
      const its = cost[slot] as number
      if (its < own || its > rest) continue
      const itsY = y[slot] as number
      const range = Math.abs((x[slot] as number) - ownX)
      if (spreadCost(terms.scale, range, Math.min(ownY, itsY), Math.max(ownY, itsY)) > rest - its) continue
      const member = members[slot] as number
      if (its === own && (crowd.place[member] as number) <= ownPlace) continue
      near[found] = member
      found += 1
    }
    this.nearCount = found
  }
}

const bandAt = ({ bottom, tall, count }: BandGrid, y: number): number =>
  Math.max(0, Math.min(count - 1, Math.floor((y - bottom) / tall)))
