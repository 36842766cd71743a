/**
 * How far the curves of a type may be off for one tube at one point, as standard
 * deviations of ln Ia and ln Ig2 (predicted-idle.ts says why these).
 *
 *   inside the fitted rows   share
 *   outside them             √(share² + (growth·reach)²)
 *   near a test point        that, times the distance to the nearest, 1 at the most.
 */
import { currentDensity, reach } from './current-density'
import type { IndividualTube } from './individual-tube'
import { CURVE_NUMBERS, curvesInto } from './plate-curves'
import type { TypeModel } from './type-model'

/** A point as far as the curves' error goes: which part of the characteristic, and at which voltages. */
export type Mark = {
  /** current-density.ts. */
  readonly density: number
  /** Of the electrode that draws the cathode current: the screen, or a triode's plate. */
  readonly drawingVolts: number
  readonly plateVolts: number
}

/** Of ln Ig2, beyond what curves and scales say: the handbook's own screen currents are met to some 40 %. */
const SCREEN_SHARE = 0.4

const least = (value: number): number => Math.max(value, 1)
const apart = (a: number, b: number): number => Math.abs(Math.log(a / b))

function distance(from: Mark, to: Mark): number {
  if (to.density <= 0 || from.density <= 0) return Number.POSITIVE_INFINITY
  return (
    apart(to.density, from.density) +
    apart(least(to.drawingVolts), least(from.drawingVolts)) +
    apart(least(to.plateVolts), least(from.plateVolts)) / 4
  )
}

export function markOf(type: TypeModel, plateVolts: number, screenVolts: number, cathodeCurrent: number): Mark {
  const drawingVolts = type.parameters.kind === 'triode' ? plateVolts : screenVolts
  return { density: currentDensity(cathodeCurrent, drawingVolts), drawingVolts, plateVolts }
}

const scratch = new Float64Array(CURVE_NUMBERS)

/** Where the tube was tested, by its own curves. */
export const testMarks = ({ type, parameters, testPoints }: IndividualTube): readonly Mark[] =>
  testPoints.map(({ plateToCathode, screenToCathode, gridToCathode }) => {
    curvesInto(parameters, plateToCathode, screenToCathode, gridToCathode, scratch)
    return markOf(type, plateToCathode, screenToCathode, (scratch[0] ?? 0) + (scratch[4] ?? 0))
  })

export const outsideBy = ({ coldest, hottest }: TypeModel, { density }: Mark): number =>
  reach(density, coldest, hottest)

/** 0 at a test point, 1 far from every one. */
export function nearness(tests: readonly Mark[], here: Mark): number {
  let nearest = 1
  for (const test of tests) nearest = Math.min(nearest, distance(test, here))
  return nearest
}

/** Of ln Ia. */
export const curveShare = (type: TypeModel, outside: number, near: number): number =>
  near * Math.sqrt(type.share * type.share + (type.growth * outside) ** 2)

/** Of ln Ig2, beyond `curveShare` and what the tube's scales say. */
export const screenOnlyShare = (near: number): number => near * SCREEN_SHARE
