/**
 * The lowest price of a set within both yardsticks, exactly. Infinity if none.
 *
 * Only the widest boxes the yardsticks allow need be looked into: one for each
 * lowest current and each lowest transconductance. In each the price is that
 * of the `count` cheapest tubes.
 */
import { CheapestWindow } from './cheapest-window'
import { byCurrent, type Point, priceOf, withoutSpares } from './point'
import { type Scale, slopeWithin } from './score'
import { endOfCurrent, endOfSlope, firstAt, insert } from './slab'

export type PriceQuery = { readonly points: readonly Point[]; readonly count: number; readonly scale: Scale }

export function leastPrice({ points, count, scale }: PriceQuery): number {
  const byRankOrder = withoutSpares(points, count)
  const rising = [...byRankOrder].sort(byCurrent)
  const base = priceOf(byRankOrder.slice(0, count - 1))
  const slab: Point[] = []
  let best = Number.POSITIVE_INFINITY
  let entered = 0
  for (let start = 0; start < rising.length; start = endOfCurrent(rising, start)) {
    const limit = (rising[start] as Point).microamps + scale.microamps
    const before = entered
    for (; entered < rising.length && (rising[entered] as Point).microamps <= limit; entered += 1) {
      insert(slab, rising[entered] as Point)
    }
    // Without a newcomer the slab is part of the one before.
    if (entered > before) best = cheapestInSlab(slab, { count, scale, base, best })
    for (const point of rising.slice(start, endOfCurrent(rising, start))) withdraw(slab, point)
  }
  return best
}

type SlabQuery = { readonly count: number; readonly scale: Scale; readonly base: number; readonly best: number }

function cheapestInSlab(slab: readonly Point[], { count, scale, base, best }: SlabQuery): number {
  const window = new CheapestWindow(count, Number.POSITIVE_INFINITY)
  let least = best
  let high = 0
  for (let low = 0; low < slab.length; ) {
    const edge = (slab[low] as Point).microsiemens
    for (; high < slab.length && slopeWithin(scale, edge, (slab[high] as Point).microsiemens); high += 1) {
      const point = slab[high] as Point
      // Even beside the cheapest tubes of all, a dearer one cannot make a cheaper set.
      if (base + point.price < best || best === Number.POSITIVE_INFINITY) window.add(point)
    }
    least = Math.min(least, window.price())
    const next = endOfSlope(slab, low)
    for (; low < next; low += 1) window.remove(slab[low] as Point)
  }
  return least
}

function withdraw(slab: Point[], point: Point): void {
  let place = firstAt(slab, point.microsiemens)
  while (slab[place]?.rank !== point.rank) place += 1
  slab.splice(place, 1)
}
