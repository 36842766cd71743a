/** One cohort laid out for the search: its tubes in the order of marks, with the costs of one way of weighing. */
import { type Costs, indexOf } from './kept-index'
import type { LineUp, Running } from './line-up'
import type { Scale } from './search/score'
import type { SetIndex } from './search/set-index'
import { POINTS_PER_YARDSTICK, type SpreadScale } from './search/spread-cost'

export type Standing = {
  readonly cohort: LineUp
  readonly running: Running
  /** In the order of marks: the index counts in these. */
  readonly places: Int32Array
  readonly index: SetIndex
  readonly scale: SpreadScale
  /** Points that every set of the cohort is charged beside what the index counts. */
  readonly charge: number
}

export function standing(cohort: LineUp, running: Running, costs: Costs): Standing {
  const places = rising(new Int32Array(cohort.members))
  const laid = { cohort, running, places, scale: spreadScaleOf(cohort), charge: chargeOf(cohort) }
  return { ...laid, index: indexOf(places, running, costs) }
}

/** Mostly they are already: sorting is then a waste. */
function rising(places: Int32Array): Int32Array {
  for (let at = 1; at < places.length; at += 1) {
    if ((places[at - 1] as number) > (places[at] as number)) return places.sort()
  }
  return places
}

/** The same tubes with other costs, and weighed by another scale. */
export function reweighed(standing: Standing, costs: Costs, as: Scaled = standing.cohort): Standing {
  const index = indexOf(standing.places, standing.running, costs)
  return { ...standing, index, scale: spreadScaleOf(as), charge: chargeOf(as) }
}

/** Some of its places, rising, weighed by other costs. */
export function narrowed(standing: Standing, places: Int32Array, costs: Costs): Standing {
  return { ...standing, places, index: indexOf(places, standing.running, costs) }
}

type Scaled = { readonly scale: Scale }

export const spreadScaleOf = ({ scale: { microamps, millionths, currentWeight, weight } }: Scaled): SpreadScale => ({
  xYard: microamps,
  yYard: Math.max(1, Math.round(millionths / 100)),
  xWeight: currentWeight,
  yWeight: weight,
})

export const chargeOf = ({ scale: { charge, weight } }: Scaled): number =>
  (POINTS_PER_YARDSTICK * charge * weight) / 1000
