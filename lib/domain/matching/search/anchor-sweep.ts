/**
 * Every tube in turn as the first of a set in the order of x, with the tubes near it.
 *
 * "Near": so that the spread of the pair, their costs and the cheapest others there are do
 * not exceed the ceiling. The tubes lie in bands of y as high as the ceiling allows a set to
 * be, so those near the anchor lie in its own band and the two beside it, further on in x.
 * A set has at most one tube that costs more than half of what the ceiling leaves to two of
 * them: these dear ones are kept apart and never looked at for each other.
 */
import { AnchorBoxes } from './anchor-boxes'
import { type BandGrid, type Bands, bandGrid, bandsOf } from './bands'
import { type Crowd, lowest, sum } from './crowd'
import type { Incumbent } from './incumbent'
import { spreadCost, widestX, widestY } from './spread-cost'

export function sweepAnchors(crowd: Crowd, incumbent: Incumbent): void {
  if (crowd.size < incumbent.terms.count) return
  new Sweep(crowd, incumbent).run()
}

/** One band of the tubes that may stand beside an anchor; `slot` is the first after it in the order of x. */
type Window = { readonly bands: Bands; slot: number; readonly until: number }

class Sweep {
  private readonly boxes: AnchorBoxes
  /** Points of all but one tube of a set, and of all but two, at the least. */
  private readonly beyondOne: number
  private readonly beyondPair: number
  private readonly grid: BandGrid
  private readonly cheap: Bands
  private readonly dear: Bands
  /** Near the anchor in hand, the first so many. */
  private readonly near: Int32Array
  private nearCount = 0
  private reach: Reach = { slack: Number.NaN, x: 0, y: 0 }

  constructor(
    private readonly crowd: Crowd,
    private readonly incumbent: Incumbent,
  ) {
    this.boxes = new AnchorBoxes(crowd, incumbent)
    const least = lowest(crowd.cost, incumbent.terms.count - 1)
    this.beyondOne = sum(least)
    this.beyondPair = sum(least.slice(0, -1))
    this.grid = bandGrid(crowd, this.tallest(least[0] as number))
    const dear = dearOnes(crowd, (incumbent.ceiling - this.beyondPair) / 2)
    this.near = new Int32Array(crowd.size)
    this.cheap = bandsOf(crowd, this.grid, dear, 0)
    this.dear = bandsOf(crowd, this.grid, dear, 1)
  }

  /** The tallest a set can be in y, at the strongest tube, and a little more. */
  private tallest(leastCost: number): number {
    const { terms, ceiling } = this.incumbent
    const ratio = Math.min(
      widestY(terms.scale, Math.max(0, ceiling - this.beyondOne - leastCost)),
      terms.yLimit / 10_000,
    )
    let strongest = 0
    for (let at = 0; at < this.crowd.size; at += 1) strongest = Math.max(strongest, this.crowd.y[at] as number)
    return strongest * ratio + 1
  }

  run(): void {
    const someDear = this.dear.members.length > 0
    for (let band = 0; band < this.grid.count; band += 1) {
      this.anchorsOf(this.cheap, band, someDear ? [this.cheap, this.dear] : [this.cheap])
      if (someDear) this.anchorsOf(this.dear, band, [this.cheap])
    }
  }

  private anchorsOf({ members, start, cost }: Bands, band: number, others: readonly Bands[]): void {
    const { incumbent, beyondOne } = this
    const [from, until] = [start[band] as number, start[band + 1] as number]
    if (from === until) return
    const windows = others.flatMap((bands) => this.windowsBeside(bands, band))
    for (let slot = from; slot < until; slot += 1) {
      const least = (cost[slot] as number) + beyondOne
      if (least > incumbent.ceiling) continue
      const anchor = members[slot] as number
      this.gather(anchor, incumbent.ceiling - least, windows)
      if (this.nearCount < incumbent.terms.count - 1) continue
      this.boxes.search(anchor, Array.from(this.near.subarray(0, this.nearCount)), least)
    }
  }

  private windowsBeside(bands: Bands, band: number): Window[] {
    return [band - 1, band, band + 1]
      .filter((at) => at >= 0 && at < this.grid.count)
      .map((at) => ({ bands, slot: bands.start[at] as number, until: bands.start[at + 1] as number }))
      .filter(({ slot, until }) => slot < until)
  }

  private gather(anchor: number, slack: number, windows: readonly Window[]): void {
    const { crowd, near } = this
    const { terms, ceiling } = this.incumbent
    const own = crowd.y[anchor] as number
    const least = crowd.x[anchor] as number
    const reach = this.reachAt(slack)
    const furthest = least + reach.x
    const bottom = own / reach.y - 1
    const top = own * reach.y + 1
    const room = ceiling - (crowd.cost[anchor] as number) - this.beyondPair
    let count = 0
    for (const window of windows) {
      const { members, x, y, cost } = window.bands
      while (window.slot < window.until && (members[window.slot] as number) <= anchor) window.slot += 1
      for (let slot = window.slot; slot < window.until && (x[slot] as number) <= furthest; slot += 1) {
        const its = y[slot] as number
        if (its < bottom || its > top) continue
        const spread = spreadCost(terms.scale, (x[slot] as number) - least, Math.min(own, its), Math.max(own, its))
        if (spread + (cost[slot] as number) > room) continue
        near[count] = members[slot] as number
        count += 1
      }
    }
    this.nearCount = count
  }

  /** How far in x, and times how much in y, the slack lets a tube be from the anchor. */
  private reachAt(slack: number): Reach {
    if (slack !== this.reach.slack) {
      const { scale, xLimit, yLimit } = this.incumbent.terms
      const x = Math.min(widestX(scale, slack), xLimit)
      this.reach = { slack, x, y: 1 + Math.min(widestY(scale, slack), yLimit / 10_000) }
    }
    return this.reach
  }
}

type Reach = { readonly slack: number; readonly x: number; readonly y: number }

function dearOnes({ cost, size }: Crowd, half: number): Uint8Array {
  const dear = new Uint8Array(size)
  for (let at = 0; at < size; at += 1) if ((cost[at] as number) > half) dear[at] = 1
  return dear
}
