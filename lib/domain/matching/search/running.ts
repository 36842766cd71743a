/** The tubes in the running for one query: those of an index, with the costs they have here. */
import type { SetIndex } from './set-index'

export type Adjustments = Int32Array | Float64Array

export type Running = Pick<SetIndex, 'size' | 'x' | 'y' | 'price' | 'place'> & {
  /** Points, adjustments included; whole, of either sign. */
  readonly cost: Float64Array
  /** By place; 1 is left out. */
  readonly excluded: Uint8Array | null
  readonly highestPrice: number
  /** Nothing is left out. */
  readonly allIn: boolean
}

export type Admission = {
  /** By place. */
  readonly adjustments: Adjustments | null
  /** By place; 1 is left out. */
  readonly excluded: Uint8Array | null
  readonly highestPrice: number
}

export function runningOf(index: SetIndex, { adjustments, excluded, highestPrice }: Admission): Running {
  const { size, x, y, price, place } = index
  const cost = adjustments === null ? index.cost : adjustedCosts(index, adjustments)
  const allIn = highestPrice === Number.POSITIVE_INFINITY && countOut(excluded) === 0
  return { size, x, y, price, place, cost, excluded, highestPrice, allIn }
}

export function adjustedCosts({ size, cost, place }: SetIndex, adjustments: Adjustments): Float64Array {
  if (adjustments.length !== size) throw new Error(`${adjustments.length} adjustments for ${size} tubes`)
  const total = new Float64Array(size)
  for (let at = 0; at < size; at += 1) total[at] = (cost[at] as number) + (adjustments[place[at] as number] as number)
  return total
}

export function countOut(excluded: Uint8Array | null): number {
  let out = 0
  for (let at = 0; excluded !== null && at < excluded.length; at += 1) out += excluded[at] as number
  return out
}

export function admits({ allIn, excluded, highestPrice, price, place }: Running, tube: number): boolean {
  if (allIn) return true
  return (excluded === null || excluded[place[tube] as number] === 0) && (price[tube] as number) <= highestPrice
}
