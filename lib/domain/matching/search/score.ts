/**
 * How far apart the tubes of a set are, in yardsticks.
 *
 *   rI = (max Ia - min Ia) / current yardstick
 *   rG = (max gm - min gm) / min gm / transconductance yardstick = (max gm / min gm - 1) / yardstick
 *   score = rI + weight * rG + charge
 *
 * The transconductance spread is taken against the weakest tube of the set,
 * not the mean: max/min can only grow when a tube is added, so a set never
 * scores below any part of it, which the mean does not promise. It is also the
 * stricter reading: within 10 % of the weakest is within 10 % of the mean.
 * The charge is a whole number of yardsticks for what was not measured.
 *
 * Floating point decides only where it is far from a tie; near one the two
 * fractions are compared in whole numbers.
 */
import type { Point } from './point'

export type Scale = {
  /** Microamps in one yardstick. */
  readonly microamps: number
  /** Millionths in one yardstick: 10 % is 100 000. */
  readonly millionths: number
  /** Thousandths: 1000 weighs both yardsticks alike. Above zero. */
  readonly weight: number
  /** Whole yardsticks of transconductance. */
  readonly charge: number
}

export type Spread = {
  readonly microamps: number
  /** Lowest and highest transconductance, microsiemens. */
  readonly lowest: number
  readonly highest: number
}

/** Far above the rounding of a double at these sizes, far below any step of a reading. */
export const NEAR = 1e-9

export function spreadOf(points: readonly Point[]): Spread {
  const currents = points.map((point) => point.microamps)
  const slopes = points.map((point) => point.microsiemens)
  return {
    microamps: Math.max(...currents) - Math.min(...currents),
    lowest: Math.min(...slopes),
    highest: Math.max(...slopes),
  }
}

export function scoreOf(scale: Scale, microamps: number, lowest: number, highest: number): number {
  const slope = ((highest - lowest) * 1000) / (lowest * scale.millionths)
  return microamps / scale.microamps + scale.weight * (slope + scale.charge / 1000)
}

/** Both scales share their yardsticks and weight; only the charge may differ. */
export function compareSpread(a: Spread, aScale: Scale, b: Spread, bScale: Scale): number {
  const x = scoreOf(aScale, a.microamps, a.lowest, a.highest)
  const y = scoreOf(bScale, b.microamps, b.lowest, b.highest)
  if (Math.abs(x - y) > NEAR * Math.max(1, x)) return x - y
  const difference = numerator(a, aScale) * BigInt(b.lowest) - numerator(b, bScale) * BigInt(a.lowest)
  if (difference === 0n) return 0
  return difference < 0n ? -1 : 1
}

/** score × lowest × (current yardstick × transconductance yardstick × 1000), a whole number. */
function numerator(spread: Spread, scale: Scale): bigint {
  const [current, slope] = [BigInt(scale.microamps), BigInt(scale.millionths)]
  const [lowest, weight] = [BigInt(spread.lowest), BigInt(scale.weight)]
  return (
    BigInt(spread.microamps) * slope * lowest * 1000n +
    weight * BigInt(spread.highest - spread.lowest) * 1_000_000n * current +
    weight * BigInt(scale.charge) * current * slope * lowest
  )
}

export const currentWithin = (spread: Spread, scale: Scale): boolean => spread.microamps <= scale.microamps

export const slopeWithin = (scale: Scale, lowest: number, highest: number): boolean =>
  (highest - lowest) * 1_000_000 <= scale.millionths * lowest
