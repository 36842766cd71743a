/**
 * The tubes in the running for one query: those of the index that are not left out and not
 * too dear, in its order, each with the cost it has here.
 */
import type { SetIndex } from './set-index'

export type Crowd = {
  readonly size: number
  readonly x: Int32Array
  readonly y: Int32Array
  /** Points, adjustments included; whole, of either sign. */
  readonly cost: Float64Array
  readonly price: Int32Array
  /** Order of marks. */
  readonly place: Int32Array
}

export type Adjustments = Int32Array | Float64Array

export type Admission = {
  /** Per place. */
  readonly adjustments: Adjustments | null
  /** Per place; 1 is left out. */
  readonly excluded: Uint8Array | null
  readonly highestPrice: number
}

export function admitted(index: SetIndex, { adjustments, excluded, highestPrice }: Admission): Crowd {
  const { size, place, price, cost } = index
  const kept = new Int32Array(size)
  const costs = new Float64Array(size)
  let count = 0
  for (let at = 0; at < size; at += 1) {
    const mark = place[at] as number
    if ((excluded !== null && excluded[mark] === 1) || (price[at] as number) > highestPrice) continue
    costs[count] = (cost[at] as number) + (adjustments === null ? 0 : (adjustments[mark] as number))
    kept[count] = at
    count += 1
  }
  return picked({ ...index, cost: costs }, kept.subarray(0, count), costs.subarray(0, count))
}

/** Those at or below a cost. */
export function upTo(crowd: Crowd, highestCost: number): Crowd {
  return chosen(crowd, (cost) => cost <= highestCost)
}

/** About so many of the cheapest; of equal ones at the edge some from all over the crowd. */
export function cheapestShare(crowd: Crowd, target: number): Crowd {
  const { size, cost } = crowd
  const step = Math.max(1, Math.floor(size / SAMPLE))
  const sample = new Float64Array(Math.floor(size / step)).map((_, at) => cost[at * step] as number).sort()
  const edge = sample[Math.floor((sample.length * target) / size)] as number
  let [below, equal] = [0, 0]
  for (let at = 0; at < size; at += 1) {
    if ((cost[at] as number) < edge) below += 1
    else if (cost[at] === edge) equal += 1
  }
  const stride = Math.max(1, Math.floor(equal / Math.max(1, target - below)))
  let met = 0
  return chosen(crowd, (each) => each < edge || (each === edge && met++ % stride === 0))
}

const SAMPLE = 1024

function chosen(crowd: Crowd, wanted: (cost: number) => boolean): Crowd {
  const kept = new Int32Array(crowd.size)
  let count = 0
  for (let at = 0; at < crowd.size; at += 1) {
    if (!wanted(crowd.cost[at] as number)) continue
    kept[count] = at
    count += 1
  }
  return picked(crowd, kept.subarray(0, count), null)
}

/** Those of `from` at the places kept, in rising order; `costs` already in the new order, or null to take its own. */
export function picked(from: Crowd, kept: Int32Array, costs: Float64Array | null): Crowd {
  const size = kept.length
  if (size === from.size) return costs === null ? from : { ...from, cost: costs }
  const [x, y] = [new Int32Array(size), new Int32Array(size)]
  const [price, place] = [new Int32Array(size), new Int32Array(size)]
  const cost = costs ?? new Float64Array(size)
  for (let to = 0; to < size; to += 1) {
    const at = kept[to] as number
    x[to] = from.x[at] as number
    y[to] = from.y[at] as number
    price[to] = from.price[at] as number
    place[to] = from.place[at] as number
    if (costs === null) cost[to] = from.cost[at] as number
  }
  return { size, x, y, price, place, cost }
}

/** The `count` lowest values, rising; fewer where there are fewer. */
export function lowest(values: Float64Array | Int32Array, count: number): number[] {
  const least: number[] = []
  if (count === 0) return least
  for (let at = 0; at < values.length; at += 1) {
    const value = values[at] as number
    if (least.length === count && value >= (least[count - 1] as number)) continue
    if (least.length === count) least.pop()
    let to = least.length
    while (to > 0 && (least[to - 1] as number) > value) to -= 1
    least.splice(to, 0, value)
  }
  return least
}

export const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)
