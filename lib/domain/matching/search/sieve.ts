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
import { spreadCost, widestX, widestY } from './spread-cost'

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
    const reach = Math.min(widestX(scale, slack), xLimit)
    const ratio = 1 + Math.min(widestY(scale, slack), yLimit / 10_000)
    const first = bandAt(grid, own / ratio - 1)
    const last = bandAt(grid, own * ratio + 1)
    this.nearCount = 0
    for (let band = first; band <= last; band += 1) this.gatherIn(band, anchor, reach)
  }

  /** From the anchor on in both directions of x. */
  private gatherIn(band: number, anchor: number, reach: number): void {
    const { x } = this.bands
    const own = this.crowd.x[anchor] as number
    const [from, until] = [this.bands.start[band] as number, this.bands.start[band + 1] as number]
    const here = this.next[band] as number
    for (let slot = here; slot < until && (x[slot] as number) - own <= reach; slot += 1) this.look(slot, anchor)
    for (let slot = here - 1; slot >= from && own - (x[slot] as number) <= reach; slot -= 1) this.look(slot, anchor)
  }

  private look(slot: number, anchor: number): void {
    const { bands, crowd, incumbent } = this
    const cost = crowd.cost[anchor] as number
    const its = bands.cost[slot] as number
    const { count, scale } = incumbent.terms
    const room = incumbent.ceiling - (count - 1) * cost - its
    if (its < cost || room < 0) return
    const member = bands.members[slot] as number
    if (its === cost && (crowd.place[member] as number) <= (crowd.place[anchor] as number)) return
    const [a, b] = [crowd.y[anchor] as number, bands.y[slot] as number]
    const range = Math.abs((bands.x[slot] as number) - (crowd.x[anchor] as number))
    if (spreadCost(scale, range, Math.min(a, b), Math.max(a, b)) > room) return
    this.near[this.nearCount] = member
    this.nearCount += 1
  }
}

const bandAt = ({ bottom, tall, count }: BandGrid, y: number): number =>
  Math.max(0, Math.min(count - 1, Math.floor((y - bottom) / tall)))
