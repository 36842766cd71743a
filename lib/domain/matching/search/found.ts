/** A set the search came upon, with what it spans and costs. */
import { type Point, priceOf } from './point'
import { type Spread, spreadOf } from './score'

export type Found = { readonly points: readonly Point[]; readonly spread: Spread; readonly price: number }

export function found(points: readonly Point[]): Found {
  return { points, spread: spreadOf(points), price: priceOf(points) }
}
