/**
 * A tube as the search sees it: whole numbers only, so that equal readings are
 * equal and no binary fraction decides a tie. Figures are rounded to 1 µA and
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

export const priceOf = (points: readonly Point[]): number => points.reduce((total, each) => total + each.price, 0)
