/**
 * Every set of a group whose objective (spread, cost and adjustments, as in
 * lib/domain/matching/search/best-set.ts) is within a ceiling. A set is built in order of x, and
 * given up where even the cheapest tubes still to come cannot bring it within.
 */
import type { BestSet, SetQuery } from '@/lib/domain/matching/search/best-set'
import { withinY } from '@/lib/domain/matching/search/incumbent'
import type { SetIndex } from '@/lib/domain/matching/search/set-index'
import { xSpread, ySpread } from '@/lib/domain/matching/search/spread-cost'

export type EverySetQuery = SetQuery & {
  readonly ceiling: number
  /** More sets than these are too many. */
  readonly most: number
}

/** Steps before it gives up: a second or so. */
const PATIENCE = 20_000_000

/** null: too many. */
export function everySet(index: SetIndex, query: EverySetQuery): readonly BestSet[] | null {
  return new SetLister(index, query).list()
}

class SetLister {
  private readonly cost: Float64Array
  private readonly listed: BestSet[] = []
  private readonly picked: number[] = []
  /** Rows the anchor can take, by rising x; and the least sum of costs of 0, 1, 2 … of them. */
  private near: readonly number[] = []
  private cheapest: readonly number[] = []
  private steps = 0

  constructor(
    private readonly index: SetIndex,
    private readonly query: EverySetQuery,
  ) {
    const { adjustments } = query
    this.cost = index.cost.map((cost, row) => cost + (adjustments?.[index.place[row] as number] ?? 0))
  }

  list(): readonly BestSet[] | null {
    for (let row = 0; row < this.index.size && !this.isOver; row += 1) if (!this.isOut(row)) this.from(row)
    return this.isOver ? null : this.listed
  }

  private get isOver(): boolean {
    return this.listed.length > this.query.most || this.steps > PATIENCE
  }

  private isOut(row: number): boolean {
    return this.query.excluded?.[this.index.place[row] as number] === 1
  }

  private from(anchor: number): void {
    const { x, y, size } = this.index
    const own = y[anchor] as number
    const near: number[] = []
    for (let row = anchor + 1; row < size && this.xWithin((x[row] as number) - (x[anchor] as number)); row += 1) {
      const other = y[row] as number
      if (!this.isOut(row) && this.yWithin(Math.min(own, other), Math.max(own, other))) near.push(row)
    }
    this.keepUseful(anchor, near)
    this.picked.push(anchor)
    this.extend(0, own, own, this.cost[anchor] as number)
    this.picked.pop()
  }

  /** Lets rows go that are too far for any set with the anchor; fewer rows, less reach, until it settles. */
  private keepUseful(anchor: number, rows: readonly number[]): void {
    const { count, scale, ceiling } = this.query
    const { x, y } = this.index
    let near = rows
    for (;;) {
      const cheapest = this.sumsOf(near)
      const others = cheapest[count - 2] ?? 0
      const kept = near.filter((row) => {
        const [low, high] = [
          Math.min(y[anchor] as number, y[row] as number),
          Math.max(y[anchor] as number, y[row] as number),
        ]
        const spread = xSpread(scale, (x[row] as number) - (x[anchor] as number)) + ySpread(scale, low, high)
        return spread + (this.cost[anchor] as number) + (this.cost[row] as number) + others <= ceiling
      })
      this.near = kept
      this.cheapest = cheapest
      if (kept.length === near.length) return
      near = kept
    }
  }

  private sumsOf(rows: readonly number[]): number[] {
    const costs = rows.map((row) => this.cost[row] as number).sort((a, b) => a - b)
    const sums = [0]
    for (let count = 1; count < this.query.count; count += 1)
      sums.push((sums[count - 1] as number) + (costs[count - 1] ?? Number.POSITIVE_INFINITY))
    return sums
  }

  private extend(from: number, low: number, high: number, paid: number): void {
    const { scale, count, ceiling } = this.query
    const { x, y } = this.index
    const missing = count - this.picked.length
    if (missing === 0) {
      this.hand(low, high, paid)
      return
    }
    const left = x[this.picked[0] as number] as number
    const last = this.near.length - missing
    this.steps += Math.max(1, last - from + 1)
    for (let at = from; at <= last && !this.isOver; at += 1) {
      const row = this.near[at] as number
      const xPart = xSpread(scale, (x[row] as number) - left)
      // Rows are in order of x, so from here on it is only wider.
      if (xPart + ySpread(scale, low, high) + paid + (this.cheapest[missing] as number) > ceiling) return
      const [bottom, top] = [Math.min(low, y[row] as number), Math.max(high, y[row] as number)]
      if (!this.yWithin(bottom, top)) continue
      const now = paid + (this.cost[row] as number)
      if (xPart + ySpread(scale, bottom, top) + now + (this.cheapest[missing - 1] as number) > ceiling) continue
      this.picked.push(row)
      this.extend(at + 1, bottom, top, now)
      this.picked.pop()
    }
  }

  private hand(yLowest: number, yHighest: number, paid: number): void {
    const { x, place, price: prices, cost: costs } = this.index
    const { scale, priceCap = Number.POSITIVE_INFINITY } = this.query
    const rows = this.picked
    const sum = (of: Int32Array | Float64Array) => rows.reduce((total, row) => total + (of[row] as number), 0)
    const price = sum(prices)
    if (price > priceCap) return
    const xRange = (x[rows[rows.length - 1] as number] as number) - (x[rows[0] as number] as number)
    const spread = xSpread(scale, xRange) + ySpread(scale, yLowest, yHighest)
    if (spread + paid > this.query.ceiling) return
    const places = rows.map((row) => place[row] as number).sort((a, b) => a - b)
    this.listed.push({ places, objective: spread + paid, spread, cost: sum(costs), price, xRange, yLowest, yHighest })
  }

  private xWithin(range: number): boolean {
    return range <= (this.query.xLimit ?? Number.POSITIVE_INFINITY)
  }

  private yWithin(low: number, high: number): boolean {
    return withinY(low, high, this.query.yLimit ?? Number.POSITIVE_INFINITY)
  }
}
