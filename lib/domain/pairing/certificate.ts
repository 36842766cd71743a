/**
 * Why no pairing costs less: the duals of the matching polytope, in doubled
 * distances so that they are whole numbers.
 *
 *   pointDual(v) <= 2 * singleCost,   blossomDual(B) >= 0
 *   pointDual(v) + pointDual(w) - (blossomDual of every B holding both) <= 2 * distance(v, w)
 *                                                                for every permitted pair
 *   2 * cost = sum of pointDual - sum of blossomDual(B) * (size(B) - 1) / 2
 *
 * Whatever keeps the first two lines is a lower bound on every pairing
 * (Edmonds 1965, from memory); the third says this pairing reaches it.
 */
export type Certificate = {
  readonly pointDuals: Float64Array
  readonly blossomDuals: Float64Array
  /** Of each point, then of each blossom: the blossom directly around it by its place in `blossomDuals`, or -1. */
  readonly around: Int32Array
}
