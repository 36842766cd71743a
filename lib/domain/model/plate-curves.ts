/**
 * Currents of a tube from its electrode voltages, with all slopes.
 *
 * Pentode or beam tetrode, five parameters. Voltages against the cathode, V; currents, A:
 *   w = Vg2/kp
 *   e = w·ln(1 + exp((Vg1 + Vg2/µ + Va/µa)/w))
 *   It = P·e^1.5,   Ig2/Ia = r·Vg2/Va,   Ia + Ig2 = It.
 * The equivalent-diode voltage and the 3/2 law are Child's and Langmuir's, the soft
 * cutoff is Koren's ("Improved vacuum tube models for SPICE simulations", Glass Audio
 * 5/96), the last line is a current-division law: plate and screen share the cathode
 * current as their voltages, the screen catching the fraction r of a plate's share.
 *
 * Triode, Koren's five parameters (same paper):
 *   e = Va/kp·ln(1 + exp(kp·(1/µ + Vg/√(kvb + Va²)))),   Ia = 2·e^x/kg.
 *
 * Rectifier: I = k·V^1.5 (Child–Langmuir).
 *
 * Everywhere smooth: plate and screen enter through `raised` (soft-edges.ts), which
 * is the voltage itself above 4 V. Two floors keep the divisions defined when both
 * are below the cathode: 10 mV under the root in w, 1 µV in the sum of the shares.
 * With 250 V on the screen they change w by 8e-10 of itself and a current by 4e-9.
 * Not modelled: control-grid current, the dip of a tetrode below the knee, emission
 * limits. Currents at Va below some 30 V are therefore only an order of magnitude.
 */
import { bounded, EDGE_VOLTS, logistic, raised, raisedSlope, softplus } from './soft-edges'

export type PentodeParameters = {
  readonly kind: 'pentode'
  /** Perveance of the cathode current, A/V^1.5. */
  readonly p: number
  /** Control grid against screen. */
  readonly mu: number
  /** Control grid against plate. */
  readonly muA: number
  /** Share of the screen: Ig2/Ia at equal voltages. */
  readonly r: number
  /** Sharpness of the cutoff; large is sharp. */
  readonly kp: number
}

export type TriodeParameters = {
  readonly kind: 'triode'
  readonly mu: number
  /** Exponent, near 1.4. */
  readonly x: number
  /** V^x/A, with Koren's factor 2 in the numerator. */
  readonly kg: number
  readonly kp: number
  /** V². */
  readonly kvb: number
}

export type DiodeParameters = {
  readonly kind: 'diode'
  /** A/V^1.5 of one plate. */
  readonly k: number
}

export type AmplifyingParameters = PentodeParameters | TriodeParameters
export type TubeParameters = AmplifyingParameters | DiodeParameters

/** Amperes, and siemens for the slopes. A triode's screen part is zero. */
export type PlateCurves = {
  readonly plate: number
  readonly plateByPlate: number
  readonly plateByScreen: number
  readonly plateByGrid: number
  readonly screen: number
  readonly screenByPlate: number
  readonly screenByScreen: number
  readonly screenByGrid: number
}

/** How many numbers the …Into functions write, in the order of PlateCurves. */
export const CURVE_NUMBERS = 8

const SHARE_FLOOR = 1e-6
const WIDTH_FLOOR_SQUARED = 1e-4

/** Writes Ia, ∂Ia/∂Va, ∂Ia/∂Vg2, ∂Ia/∂Vg1, Ig2, ∂Ig2/∂Va, ∂Ig2/∂Vg2, ∂Ig2/∂Vg1 from `at` on. Allocates nothing. */
export function pentodeInto(
  tube: PentodeParameters,
  plateToCathode: number,
  screenToCathode: number,
  gridToCathode: number,
  out: Float64Array,
  at = 0,
): void {
  const va = bounded(plateToCathode)
  const vg2 = bounded(screenToCathode)
  const a = raised(va)
  const s = raised(vg2)
  const aSlope = raisedSlope(va)
  const sSlope = raisedSlope(vg2)

  const root = Math.sqrt(s * s + WIDTH_FLOOR_SQUARED)
  const w = root / tube.kp
  const u = (bounded(gridToCathode) + vg2 / tube.mu + va / tube.muA) / w
  const soft = softplus(u)
  const on = logistic(u)
  const e = w * soft
  const eByScreen = on / tube.mu + ((soft - u * on) * (s / root) * sSlope) / tube.kp

  const slope = tube.p * Math.sqrt(e)
  const total = slope * e
  const totalByGrid = 1.5 * slope * on
  const totalByPlate = totalByGrid / tube.muA
  const totalByScreen = 1.5 * slope * eByScreen

  const sum = a + tube.r * s + SHARE_FLOOR
  const plateShare = a / sum
  const screenShare = (tube.r * s) / sum
  const perPlate = (total * aSlope) / sum
  const perScreen = (total * tube.r * sSlope) / sum

  out[at] = total * plateShare
  out[at + 1] = totalByPlate * plateShare + perPlate * (1 - plateShare)
  out[at + 2] = totalByScreen * plateShare - perScreen * plateShare
  out[at + 3] = totalByGrid * plateShare
  out[at + 4] = total * screenShare
  out[at + 5] = totalByPlate * screenShare - perPlate * screenShare
  out[at + 6] = totalByScreen * screenShare + perScreen * (1 - screenShare)
  out[at + 7] = totalByGrid * screenShare
}

/** Same layout as `pentodeInto`; everything of the screen is zero. Allocates nothing. */
export function triodeInto(
  tube: TriodeParameters,
  plateToCathode: number,
  gridToCathode: number,
  out: Float64Array,
  at = 0,
): void {
  const va = bounded(plateToCathode)
  const vg = bounded(gridToCathode)
  const a = raised(va)
  const spread = Math.sqrt(tube.kvb + a * a)
  const u = tube.kp * (1 / tube.mu + vg / spread)
  const soft = softplus(u)
  const on = logistic(u)
  const e = (a * soft) / tube.kp
  const eByPlate = (soft / tube.kp - (a * a * on * vg) / (spread * spread * spread)) * raisedSlope(va)
  const eByGrid = (a * on) / spread

  const power = (2 * e ** (tube.x - 1)) / tube.kg
  out.fill(0, at, at + CURVE_NUMBERS)
  out[at] = power * e
  out[at + 1] = tube.x * power * eByPlate
  out[at + 3] = tube.x * power * eByGrid
}

/** One call for either kind; a triode ignores the screen. */
export function curvesInto(
  tube: AmplifyingParameters,
  plateToCathode: number,
  screenToCathode: number,
  gridToCathode: number,
  out: Float64Array,
  at = 0,
): void {
  if (tube.kind === 'pentode') pentodeInto(tube, plateToCathode, screenToCathode, gridToCathode, out, at)
  else triodeInto(tube, plateToCathode, gridToCathode, out, at)
}

function named(from: Float64Array): PlateCurves {
  const [plate, plateByPlate, plateByScreen, plateByGrid, screen, screenByPlate, screenByScreen, screenByGrid] =
    from as unknown as [number, number, number, number, number, number, number, number]
  return { plate, plateByPlate, plateByScreen, plateByGrid, screen, screenByPlate, screenByScreen, screenByGrid }
}

function refuseNaN(...voltages: readonly number[]): void {
  if (voltages.some(Number.isNaN)) throw new Error(`Electrode voltages must be numbers, got ${voltages.join(', ')} V`)
}

export function pentodeCurrents(
  tube: PentodeParameters,
  plateToCathode: number,
  screenToCathode: number,
  gridToCathode: number,
): PlateCurves {
  refuseNaN(plateToCathode, screenToCathode, gridToCathode)
  const out = new Float64Array(CURVE_NUMBERS)
  pentodeInto(tube, plateToCathode, screenToCathode, gridToCathode, out)
  return named(out)
}

export function triodeCurrents(tube: TriodeParameters, plateToCathode: number, gridToCathode: number): PlateCurves {
  refuseNaN(plateToCathode, gridToCathode)
  const out = new Float64Array(CURVE_NUMBERS)
  triodeInto(tube, plateToCathode, gridToCathode, out)
  return named(out)
}

export const tubeCurrents = (
  tube: AmplifyingParameters,
  plateToCathode: number,
  screenToCathode: number,
  gridToCathode: number,
): PlateCurves =>
  tube.kind === 'pentode'
    ? pentodeCurrents(tube, plateToCathode, screenToCathode, gridToCathode)
    : triodeCurrents(tube, plateToCathode, gridToCathode)

/** Forward current of one rectifier plate and its slope dI/dV; dies away below zero. */
export function diodeCurrent(tube: DiodeParameters, forwardVolts: number): { current: number; slope: number } {
  refuseNaN(forwardVolts)
  const volts = bounded(forwardVolts)
  const raisedVolts = raised(volts)
  const root = tube.k * Math.sqrt(raisedVolts)
  return { current: root * raisedVolts, slope: 1.5 * root * raisedSlope(volts) }
}

/**
 * Drop of one rectifier plate that carries this current, and dV/dI. Nothing flows
 * backwards: zero drop at zero or negative current. The slope grows without bound
 * towards zero current and is capped at its value at the drop of one edge (0.1 V).
 */
export function diodeDrop(tube: DiodeParameters, current: number): { drop: number; slope: number } {
  refuseNaN(current)
  const drop = current > 0 ? Math.cbrt((current / tube.k) ** 2) : 0
  return { drop, slope: 1 / (1.5 * tube.k * Math.sqrt(Math.max(drop, EDGE_VOLTS))) }
}
