/**
 * A tube as the search sees it: whole numbers only, so that equal readings are
 * equal and no binary fraction decides a tie. Readings are rounded to 1 µA and
 * 1 µS, far below what a bench meter resolves.
 */
export type Point = {
  /** Place in the order of price, then mark. No two tubes share one. */
  readonly rank: number
  /** Place in the natural order of marks. No two tubes share one. */
  readonly markRank: number
  readonly microamps: number
  /** At least 1. All tubes carry 1 where transconductance takes no part. */
  readonly microsiemens: number
  /** Minor units. */
  readonly price: number
}

export const byRank = (a: Point, b: Point): number => a.rank - b.rank
export const byCurrent = (a: Point, b: Point): number => a.microamps - b.microamps || a.rank - b.rank
export const byTransconductance = (a: Point, b: Point): number => a.microsiemens - b.microsiemens || a.rank - b.rank

export const priceOf = (points: readonly Point[]): number => points.reduce((total, each) => total + each.price, 0)

/**
 * Tubes with the same two readings are interchangeable but for price and mark,
 * so no set needs more than the `count` first of them.
 */
export function withoutSpares(points: readonly Point[], count: number): Point[] {
  const seen = new Map<string, number>()
  return [...points].sort(byRank).filter((point) => {
    const reading = `${point.microamps}/${point.microsiemens}`
    const before = seen.get(reading) ?? 0
    seen.set(reading, before + 1)
    return before < count
  })
}

/** The tubes that fit under the cap together with the cheapest others. `sorted` is by rank. */
export function affordable(sorted: readonly Point[], count: number, cap: number): Point[] {
  if (sorted.length < count || priceOf(sorted.slice(0, count)) > cap) return []
  const base = priceOf(sorted.slice(0, count - 1))
  return sorted.filter((point, place) => place < count || base + point.price <= cap)
}
