/**
 * A lower bound from prices, by plain sums:
 *
 *   sum of prices + price of the count * its end + sum of cut prices
 *     + sum over points of min(0, singleCost - price) + (sets at most) * min(0, least reduced cost)
 *
 * Any prices do; good ones come from the relaxed choice. They are rounded to
 * a fixed grain, so that sums of them and of whole costs are exact.
 */
import type { Plane } from '@/lib/domain/pairing/plane'
import { type Cut, cutPrices } from './cut-prices'
import type { Column, Count, Relaxed } from './set-program'

const GRAIN = 2 ** -16

export type Prices = {
  readonly points: Float64Array
  readonly count: number
  readonly cuts: Float64Array
}

export function pricesOf({ prices, countPrice, cutPrices }: Relaxed): Prices {
  const grained = (price: number) => Math.floor(price / GRAIN) * GRAIN
  return { points: prices.map(grained), count: grained(countPrice), cuts: cutPrices.map(grained) }
}

/** `least`: no set that is still in question has a lower reduced cost. */
export function boundOf({ singleCost }: Plane, prices: Prices, count: Count, least: number): number {
  let bound = count.most * Math.min(0, least) + prices.count * (prices.count > 0 ? count.least : count.most)
  for (const price of prices.points) bound += price + Math.min(0, singleCost - price)
  for (const price of prices.cuts) bound += price
  return bound
}

export function reducedCosts(columns: readonly Column[], prices: Prices, cuts: readonly Cut[]): readonly number[] {
  const cutsOf = cutPrices(cuts, prices.cuts)
  return columns.map(({ members, spread }) => {
    const paid = members.reduce((sum, point) => sum + (prices.points[point] as number), prices.count)
    return spread - paid - cutsOf(members)
  })
}
