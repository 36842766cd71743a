/**
 * How far apart the tubes of a set are, in yardsticks, as it is shown.
 *
 *   score = weight · (max Ia − min Ia) / yardstick + weight · ((max gm / min gm − 1) / yardstick + charge)
 *
 * The search itself counts the same in whole points (spread-cost.ts, which says why the
 * ratio is taken against the weakest tube). The charge is a whole number of yardsticks for
 * what was not measured.
 */
import type { Point } from './point'

export type Scale = {
  /** Microamps in one yardstick. */
  readonly microamps: number
  /** Millionths in one yardstick: 10 % is 100 000. */
  readonly millionths: number
  /** Of the current, in thousandths. */
  readonly currentWeight: number
  /** Of the transconductance, in thousandths: 1000 weighs a yardstick as one. */
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

export function spreadOf(points: readonly Point[]): Spread {
  const currents = points.map((point) => point.microamps)
  const slopes = points.map((point) => point.microsiemens)
  return {
    microamps: Math.max(...currents) - Math.min(...currents),
    lowest: Math.min(...slopes),
    highest: Math.max(...slopes),
  }
}

export function scoreOf(scale: Scale, { microamps, lowest, highest }: Spread): number {
  const slope = ((highest - lowest) * 1000) / (lowest * scale.millionths)
  const current = (scale.currentWeight * microamps) / (1000 * scale.microamps)
  return current + scale.weight * (slope + scale.charge / 1000)
}

export const currentWithin = (spread: Spread, scale: Scale): boolean => spread.microamps <= scale.microamps

export const slopeWithin = (scale: Scale, lowest: number, highest: number): boolean =>
  (highest - lowest) * 1_000_000 <= scale.millionths * lowest
