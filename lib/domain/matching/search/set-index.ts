/**
 * The tubes a set is chosen from, kept in rising order of x so that a query need not sort.
 *
 * x and y are whatever two figures are to be alike (idle current in µA, transconductance in
 * µS), cost what choosing the tube costs beside that, in points (spread-cost.ts), price in
 * minor units. Arrays are in natural order of marks: the place in them decides ties.
 */
import { PLACES, placesBy } from '../places-by'

export type SetPoints = {
  readonly x: Int32Array
  /** At least 1. All carry 1 where y takes no part. */
  readonly y: Int32Array
  /** Whole, not negative. */
  readonly cost: Int32Array | Float64Array
  readonly price: Int32Array
}

/** Arrays by rising x, then place. */
export type SetIndex = SetPoints & {
  readonly cost: Float64Array
  readonly size: number
  /** Where each tube stood in the arrays given. */
  readonly place: Int32Array
}

const HIGHEST_X = 2 ** 30

export function setIndex(points: SetPoints): SetIndex {
  assertPoints(points)
  const place = placesBy(points.x)
  return {
    size: place.length,
    place,
    x: place.map((at) => points.x[at] as number),
    y: place.map((at) => points.y[at] as number),
    cost: costsOf(points.cost, place),
    price: place.map((at) => points.price[at] as number),
  }
}

/** In the order of some numbers. A loop: Float64Array.from takes ten times as long for a hundred thousand. */
export function costsOf(cost: Int32Array | Float64Array, numbers: Int32Array): Float64Array {
  const costs = new Float64Array(numbers.length)
  for (let at = 0; at < costs.length; at += 1) costs[at] = cost[numbers[at] as number] as number
  return costs
}

function assertPoints({ x, y, cost, price }: SetPoints): void {
  const size = x.length
  if (y.length !== size || cost.length !== size || price.length !== size || size >= PLACES) {
    throw new Error(`Points: ${x.length} x, ${y.length} y, ${cost.length} costs, ${price.length} prices`)
  }
  for (let at = 0; at < size; at += 1) {
    const sound = Math.abs(x[at] as number) < HIGHEST_X && (y[at] as number) >= 1 && (cost[at] as number) >= 0
    if (!sound) throw new Error(`Point ${at}: x ${x[at]}, y ${y[at]}, cost ${cost[at]}`)
  }
}
