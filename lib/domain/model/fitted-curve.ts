/** What a fit leaves behind for one set of curves. */
import type { AmplifyingParameters } from './plate-curves'

export type FittedCurve = {
  readonly parameters: AmplifyingParameters
  /** Operating rows fitted. */
  readonly rows: number
  /**
   * False: the rows are all about equally far from cutoff, so cold idle points are
   * extrapolation and carry a wider band.
   */
  readonly cutoffKnown: boolean
  /** Current density (current-density.ts) of the coldest and the hottest fitted row. */
  readonly coldest: number
  readonly hottest: number
  /** Standard deviation of ln Ia of a row not fitted, inside the fitted range. */
  readonly share: number
}

export type ModelErrors = {
  /** `share` over all output types together. */
  readonly pooledShare: number
  /** Standard deviation of ln Ia per unit of reach outside the fitted rows. */
  readonly growth: number
}
