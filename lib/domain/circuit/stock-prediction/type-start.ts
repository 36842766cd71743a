/**
 * Where Newton's method starts for a tube of a type: the solution with the average tube in
 * its places, moved along the logarithms of all currents by the tube's scales. Nearly every
 * tube is then two or three steps from its operating point.
 */
import { at } from '@/lib/domain/circuit/solver/dense-lu'
import { solveCurrents } from '@/lib/domain/circuit/solver/solve-currents'
import { MOST_UNKNOWNS, type Wiring } from '@/lib/domain/circuit/solver/wiring'
import type { AmplifyingParameters } from '@/lib/domain/model/plate-curves'
import { AS_TYPE, type LogScales, SCALES, scaledTube } from '@/lib/domain/model/tube-scales'

export type TypeStart = {
  readonly currents: Float64Array
  /** ∂ ln x by the scale of every filled place at once; rows of MOST_UNKNOWNS. */
  readonly slopes: Float64Array
}

const NUDGE = 0.05
/** Further than this the straight line is no guide. */
const FURTHEST = 2

function solvedWith(wiring: Wiring, places: readonly number[], tube: AmplifyingParameters): Float64Array | null {
  for (const place of places) wiring.parameters[place] = tube
  return solveCurrents(wiring, false).converged ? wiring.currents.slice() : null
}

const along = (scale: number, step: number): LogScales => {
  const [p = 0, mu = 0, r = 0] = AS_TYPE.map((zero, i) => (i === scale ? step : zero))
  return [p, mu, r]
}

/** Null: the average tube has no operating point there. */
export function typeStart(wiring: Wiring, places: readonly number[], type: AmplifyingParameters): TypeStart | null {
  const currents = solvedWith(wiring, places, type)
  if (!currents) return null
  const slopes = new Float64Array(SCALES * MOST_UNKNOWNS)
  for (let scale = 0; scale < SCALES; scale++) {
    const up = solvedWith(wiring, places, scaledTube(type, along(scale, NUDGE)))
    const down = solvedWith(wiring, places, scaledTube(type, along(scale, -NUDGE)))
    for (let k = 0; k < MOST_UNKNOWNS; k++) {
      const ratio = up && down && at(down, k) > 0 ? at(up, k) / at(down, k) : 1
      slopes[scale * MOST_UNKNOWNS + k] = ratio > 0 ? Math.log(ratio) / (2 * NUDGE) : 0
    }
  }
  return { currents, slopes }
}

export function startAt(wiring: Wiring, { currents, slopes }: TypeStart, [p, mu, r]: LogScales): void {
  for (let k = 0; k < 2 * wiring.count; k++) {
    const along = p * at(slopes, k) + mu * at(slopes, MOST_UNKNOWNS + k) + r * at(slopes, 2 * MOST_UNKNOWNS + k)
    wiring.currents[k] = at(currents, k) * Math.exp(Math.max(-FURTHEST, Math.min(FURTHEST, along)))
  }
}
