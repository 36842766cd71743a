/**
 * All permitted sets of `size` points whose reduced cost
 *
 *   spread - sum of prices of its points,   spread = (max x - min x) + (max y - min y)
 *
 * is below a limit. Over all sets there are, not over near ones: a set is
 * built in order of x, and given up when even the dearest points still to
 * come cannot bring it below the limit.
 */
import type { Plane } from '@/lib/domain/pairing/plane'

export type FoundSet = {
  /** Rising. */
  readonly members: readonly number[]
  readonly spread: number
  readonly reduced: number
}

/** Steps of one search before it gives up: some seconds. */
const PATIENCE = 100_000_000

export class SetSearch {
  private readonly byX: readonly number[]
  private prices: Float64Array = new Float64Array(0)
  private limit = 0
  private steps = 0
  private sink: (found: FoundSet) => number = () => 0
  private readonly picked: number[] = []
  /** The dearest prices among the points an anchor can take: sum of the first 0, 1, 2 … of them. */
  private dearest: number[] = []
  private near: number[] = []

  constructor(
    private readonly plane: Plane,
    private readonly size: number,
  ) {
    const { x } = plane
    this.byX = [...x.keys()].sort((a, b) => (x[a] as number) - (x[b] as number) || a - b)
  }

  /**
   * Hands each set below the limit over, anchor by anchor; the answer is the limit from there on.
   * False when it had to give up: then not all were seen.
   */
  each(prices: Float64Array, limit: number, sink: (found: FoundSet) => number): boolean {
    this.prices = prices
    this.limit = limit
    this.sink = sink
    this.steps = 0
    for (let place = 0; place < this.byX.length && this.steps < PATIENCE; place += 1) this.fromAnchor(place)
    return this.steps < PATIENCE
  }

  private fromAnchor(place: number): void {
    const { x, y, widthX, widthY } = this.plane
    const anchor = this.byX[place] as number
    const [left, middle] = [x[anchor] as number, y[anchor] as number]
    this.near = []
    for (let next = place + 1; next < this.byX.length; next += 1) {
      const point = this.byX[next] as number
      if ((x[point] as number) - left > widthX) break
      if (Math.abs((y[point] as number) - middle) <= widthY) this.near.push(point)
    }
    this.keepUseful(anchor)
    this.picked.push(anchor)
    this.extend(0, middle, middle, this.prices[anchor] as number)
    this.picked.pop()
  }

  /** Lets points go that are too far for any set with the anchor; fewer points, tighter reach, until it settles. */
  private keepUseful(anchor: number): void {
    const { x, y } = this.plane
    const own = this.prices[anchor] as number
    for (;;) {
      this.dearest = this.sumsOfDearest()
      const others = this.dearest[this.size - 2] as number
      const kept = this.near.filter((point) => {
        const dx = (x[point] as number) - (x[anchor] as number)
        const dy = Math.abs((y[point] as number) - (y[anchor] as number))
        return dx + dy - own - (this.prices[point] as number) - others < this.limit
      })
      if (kept.length === this.near.length) return
      this.near = kept
    }
  }

  private sumsOfDearest(): number[] {
    const most = this.near.map((point) => this.prices[point] as number).sort((a, b) => b - a)
    const sums = [0]
    for (let count = 1; count < this.size; count += 1) {
      sums.push((sums[count - 1] as number) + (most[count - 1] ?? Number.NEGATIVE_INFINITY))
    }
    return sums
  }

  private extend(from: number, low: number, high: number, paid: number): void {
    const { x, y, widthY } = this.plane
    const missing = this.size - this.picked.length
    const left = x[this.picked[0] as number] as number
    const last = this.near.length - missing
    this.steps += Math.max(0, last - from + 1)
    for (let place = from; place <= last; place += 1) {
      const point = this.near[place] as number
      const dx = (x[point] as number) - left
      // Points are in order of x, so from here on it is only wider.
      if (dx + high - low - paid - (this.dearest[missing] as number) >= this.limit) return
      const bottom = Math.min(low, y[point] as number)
      const top = Math.max(high, y[point] as number)
      if (top - bottom > widthY) continue
      const now = paid + (this.prices[point] as number)
      const reduced = dx + top - bottom - now
      if (reduced - (this.dearest[missing - 1] as number) >= this.limit) continue
      this.picked.push(point)
      if (missing > 1) this.extend(place + 1, bottom, top, now)
      else this.hand(dx + top - bottom, reduced)
      this.picked.pop()
      if (this.steps >= PATIENCE) return
    }
  }

  private hand(spread: number, reduced: number): void {
    this.limit = this.sink({ members: [...this.picked].sort((a, b) => a - b), spread, reduced })
  }
}
