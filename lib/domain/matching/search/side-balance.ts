/**
 * What the difference of the two sides of a push-pull set counts, in whole points: one yardstick
 * is a million.
 *
 *   floor(weight · least |sum of x of one side − sum of x of the other| / yardstick)
 *
 * over all ways to seat the tubes on two sides of equal number. Whatever tubes are added or
 * exchanged, it is never below zero: what a set counts without it stays a lower bound.
 */
import { POINTS_PER_YARDSTICK } from './spread-cost'

export type SideBalance = {
  /** Units of x (µA) in one yardstick, whole. */
  readonly yard: number
  /** Thousandths, whole, not negative. */
  readonly weight: number
}

const POINTS = POINTS_PER_YARDSTICK / 1000

export const balanceCost = ({ yard, weight }: SideBalance, values: readonly number[]): number =>
  Math.floor((leastDifference(values) * weight * POINTS) / yard)

/** Of an even number of values; the first stays on its side, as sides have no order. */
export function leastDifference(values: readonly number[]): number {
  const total = values.reduce((sum, value) => sum + value, 0)
  return leastFrom(values, { from: 1, wanted: values.length / 2 - 1, side: values[0] ?? 0, total })
}

type Seating = { readonly from: number; readonly wanted: number; readonly side: number; readonly total: number }

function leastFrom(values: readonly number[], { from, wanted, side, total }: Seating): number {
  if (wanted === 0) return Math.abs(total - 2 * side)
  let least = Number.POSITIVE_INFINITY
  for (let at = from; at <= values.length - wanted; at += 1) {
    const next = { from: at + 1, wanted: wanted - 1, side: side + (values[at] as number), total }
    least = Math.min(least, leastFrom(values, next))
  }
  return least
}
