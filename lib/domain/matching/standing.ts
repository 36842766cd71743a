/** One cohort laid out for the search: its tubes in the order of marks, with the costs of one way of weighing. */
import type { RankedCohort, TubePoint } from './ranked-stock'
import { type SetIndex, setIndex } from './search/set-index'
import { POINTS_PER_YARDSTICK, type SpreadScale } from './search/spread-cost'

export type Standing = {
  readonly cohort: RankedCohort
  /** In the order of the index. */
  readonly points: readonly TubePoint[]
  readonly index: SetIndex
  readonly scale: SpreadScale
  /** Points that every set of the cohort is charged beside what the index counts. */
  readonly charge: number
}

export function standing(cohort: RankedCohort, costOf: (point: TubePoint) => number): Standing {
  const points = [...cohort.points].sort((a, b) => a.markRank - b.markRank)
  const { microamps, millionths, currentWeight, weight, charge } = cohort.scale
  return {
    cohort,
    points,
    index: setIndex({
      x: Int32Array.from(points, (point) => point.microamps),
      y: Int32Array.from(points, (point) => point.microsiemens),
      cost: Float64Array.from(points, costOf),
      price: Int32Array.from(points, (point) => point.price),
    }),
    scale: {
      xYard: microamps,
      yYard: Math.max(1, Math.round(millionths / 100)),
      xWeight: currentWeight,
      yWeight: weight,
    },
    charge: (POINTS_PER_YARDSTICK * charge * weight) / 1000,
  }
}
