/**
 * A set the search came upon, and the order in which sets are preferred:
 * closer, then cheaper, then earlier marks.
 */
import { type Point, priceOf } from './point'
import { compareSpread, type Scale, type Spread, spreadOf } from './score'

export type Found = { readonly points: readonly Point[]; readonly spread: Spread; readonly price: number }

export function found(points: readonly Point[]): Found {
  return { points, spread: spreadOf(points), price: priceOf(points) }
}

export function compareFound(a: Found, aScale: Scale, b: Found, bScale: Scale): number {
  return compareSpread(a.spread, aScale, b.spread, bScale) || a.price - b.price || compareMarks(a.points, b.points)
}

/** Marks of each set in natural order, first difference decides. */
export function compareMarks(a: readonly Point[], b: readonly Point[]): number {
  const x = a.map((point) => point.markRank).sort((left, right) => left - right)
  const y = b.map((point) => point.markRank).sort((left, right) => left - right)
  for (let place = 0; place < x.length; place += 1) {
    const order = (x[place] as number) - (y[place] as number)
    if (order !== 0) return order
  }
  return 0
}
