/**
 * The best set met so far, and the highest objective that could still replace it.
 *
 * Order of preference: lower objective, then the earlier marks, compared mark by mark.
 */
import type { Crowd } from './crowd'
import { type SpreadScale, spreadCost } from './spread-cost'

/** What every set of one query is held to. */
export type Terms = {
  readonly count: number
  readonly scale: SpreadScale
  /** Inclusive; Infinity for none. */
  readonly xLimit: number
  /** Highest max y / min y − 1 in ten-thousandths, inclusive; Infinity for none. */
  readonly yLimit: number
  readonly priceCap: number
}

export type Held = {
  /** Rising. */
  readonly places: readonly number[]
  readonly objective: number
  readonly price: number
  readonly xRange: number
  readonly yLowest: number
  readonly yHighest: number
}

export const withinY = (lowest: number, highest: number, limit: number): boolean =>
  (highest - lowest) * 10_000 <= limit * lowest

export class Incumbent {
  best: Held | null = null

  /** `ceiling`: an objective above it is of no use; a tie with the best one may be. */
  constructor(
    readonly terms: Terms,
    public ceiling: number,
  ) {}

  /** `members` are places in the crowd, the price cap already seen to. */
  offer(crowd: Crowd, members: readonly number[]): void {
    const box = boxOf(crowd, members)
    const { scale, xLimit, yLimit } = this.terms
    if (box.xRange > xLimit || !withinY(box.yLowest, box.yHighest, yLimit)) return
    const objective = spreadCost(scale, box.xRange, box.yLowest, box.yHighest) + box.cost
    if (objective > this.ceiling) return
    const places = members.map((at) => crowd.place[at] as number).sort((a, b) => a - b)
    if (this.best && objective === this.best.objective && comparePlaces(places, this.best.places) >= 0) return
    const { price, xRange, yLowest, yHighest } = box
    this.best = { places, objective, price, xRange, yLowest, yHighest }
    this.ceiling = objective
  }
}

function boxOf({ x, y, cost, price }: Crowd, members: readonly number[]) {
  let [xLowest, xHighest, yLowest, yHighest] = [Infinity, -Infinity, Infinity, -Infinity]
  let [total, paid] = [0, 0]
  for (const at of members) {
    xLowest = Math.min(xLowest, x[at] as number)
    xHighest = Math.max(xHighest, x[at] as number)
    yLowest = Math.min(yLowest, y[at] as number)
    yHighest = Math.max(yHighest, y[at] as number)
    total += cost[at] as number
    paid += price[at] as number
  }
  return { xRange: xHighest - xLowest, yLowest, yHighest, cost: total, price: paid }
}

/** Both rising and of one length; the first difference decides. */
export function comparePlaces(a: readonly number[], b: readonly number[]): number {
  for (let at = 0; at < a.length; at += 1) {
    const order = (a[at] as number) - (b[at] as number)
    if (order !== 0) return order
  }
  return 0
}
