/**
 * The best set met so far, and the highest objective that could still replace it.
 *
 * Order of preference: lower objective, then the earlier marks, compared mark by mark.
 */
import { balanceCost, type SideBalance } from './side-balance'
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
  /** null: the sides of a set weigh nothing. */
  readonly balance: SideBalance | null
}

export type Held = {
  /** Rising. */
  readonly places: readonly number[]
  readonly objective: number
  readonly balance: number
  readonly price: number
  readonly xRange: number
  readonly yLowest: number
  readonly yHighest: number
}

/** By number of the tube. */
export type Figures = {
  readonly x: Int32Array
  readonly y: Int32Array
  /** Points, adjustments included. */
  readonly cost: Float64Array
  readonly price: Int32Array
  /** Order of marks. */
  readonly place: Int32Array
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

  offer(figures: Figures, tubes: ArrayLike<number>): void {
    const box = boxOf(figures, tubes, this.terms.count)
    const { scale, xLimit, yLimit, priceCap, balance } = this.terms
    if (box.price > priceCap || box.xRange > xLimit || !withinY(box.yLowest, box.yHighest, yLimit)) return
    const unbalanced = spreadCost(scale, box.xRange, box.yLowest, box.yHighest) + box.cost
    if (unbalanced > this.ceiling) return
    const apart = balance === null ? 0 : balanceCost(balance, currentsOf(figures, tubes, this.terms.count))
    const objective = unbalanced + apart
    if (objective > this.ceiling) return
    const places = Array.from({ length: this.terms.count }, (_, at) => figures.place[tubes[at] as number] as number)
    places.sort((a, b) => a - b)
    if (this.best && objective === this.best.objective && comparePlaces(places, this.best.places) >= 0) return
    const { price, xRange, yLowest, yHighest } = box
    this.best = { places, objective, balance: apart, price, xRange, yLowest, yHighest }
    this.ceiling = objective
  }
}

const currentsOf = ({ x }: Figures, tubes: ArrayLike<number>, count: number): number[] =>
  Array.from({ length: count }, (_, at) => x[tubes[at] as number] as number)

function boxOf({ x, y, cost, price }: Figures, tubes: ArrayLike<number>, count: number) {
  let [xLowest, xHighest, yLowest, yHighest] = [Infinity, -Infinity, Infinity, -Infinity]
  let [total, paid] = [0, 0]
  for (let nth = 0; nth < count; nth += 1) {
    const at = tubes[nth] as number
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
