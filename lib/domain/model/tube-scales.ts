/**
 * A tube that differs from its type by three factors, kept as logarithms:
 * perveance P, amplification factor µ and screen share r (ignored for a triode).
 *
 * Slopes of the currents by these, exact for the equations of plate-curves.ts:
 *   ∂/∂ln P = the current itself
 *   ∂/∂ln µ = −(Vg2/µ)·gm      (triode: −(√(kvb + Va²)/µ)·gm)
 *   ∂ln Ia/∂ln r = −Ig2/Ik,    ∂ln Ig2/∂ln r = Ia/Ik.
 */
import { type AmplifyingParameters, CURVE_NUMBERS, curvesInto } from './plate-curves'
import { raised } from './soft-edges'

export const SCALES = 3
export type LogScales = readonly [perveance: number, mu: number, screenShare: number]
export const AS_TYPE: LogScales = [0, 0, 0]

export function scaledTube(type: AmplifyingParameters, [p, mu, r]: LogScales): AmplifyingParameters {
  if (type.kind === 'triode') return { ...type, kg: type.kg * Math.exp(-p), mu: type.mu * Math.exp(mu) }
  return { ...type, p: type.p * Math.exp(p), mu: type.mu * Math.exp(mu), r: type.r * Math.exp(r) }
}

export type Point = {
  readonly plateToCathode: number
  readonly screenToCathode: number
  readonly gridToCathode: number
}

export type LoggedPoint = {
  readonly plate: number
  readonly screen: number
  readonly gm: number
  /** ∂ln Ia and ∂ln Ig2 by the three scales; those of Ig2 are zero for a triode. */
  readonly plateSlopes: LogScales
  readonly screenSlopes: LogScales
}

const scratch = new Float64Array(CURVE_NUMBERS)
const at = (index: number): number => scratch[index] ?? Number.NaN

/** Volts by which the drive falls when ln µ rises by one. */
export function driveByMu(tube: AmplifyingParameters, plateToCathode: number, screenToCathode: number): number {
  if (tube.kind === 'pentode') return screenToCathode / tube.mu
  return Math.sqrt(tube.kvb + raised(plateToCathode) ** 2) / tube.mu
}

export function loggedPoint(tube: AmplifyingParameters, point: Point): LoggedPoint {
  curvesInto(tube, point.plateToCathode, point.screenToCathode, point.gridToCathode, scratch)
  const [plate, gm, screen, screenGm] = [at(0), at(3), at(4), at(7)]
  const drive = driveByMu(tube, point.plateToCathode, point.screenToCathode)
  const cathode = plate + screen
  const bySlope = (slope: number, current: number): number => (current > 0 ? (-drive * slope) / current : 0)
  return {
    plate,
    screen,
    gm,
    plateSlopes: [1, bySlope(gm, plate), cathode > 0 ? -screen / cathode : 0],
    screenSlopes: screen > 0 ? [1, bySlope(screenGm, screen), plate / cathode] : [0, 0, 0],
  }
}

export function gmAt(tube: AmplifyingParameters, point: Point): number {
  curvesInto(tube, point.plateToCathode, point.screenToCathode, point.gridToCathode, scratch)
  return at(3)
}
