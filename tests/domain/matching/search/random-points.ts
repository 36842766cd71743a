import type { SetPoints } from '@/lib/domain/matching/search/set-index'

export type PointShape = {
  readonly size: number
  /** Readings are rounded to these, µA and µS: coarse steps give many ties. */
  readonly xStep: number
  readonly yStep: number
  /** Points; 0 makes all costs zero. */
  readonly costStep: number
  readonly costSteps: number
}

/** From fine readings to such coarse ones that nearly all are ties. */
export const SHAPES: readonly Omit<PointShape, 'size'>[] = [
  { xStep: 1, yStep: 1, costStep: 1, costSteps: 1_000_000 },
  { xStep: 1, yStep: 1, costStep: 0, costSteps: 1 },
  { xStep: 500, yStep: 100, costStep: 250_000, costSteps: 4 },
  { xStep: 5000, yStep: 500, costStep: 1_000_000, costSteps: 2 },
  { xStep: 10_000, yStep: 1000, costStep: 0, costSteps: 1 },
  { xStep: 100, yStep: 50, costStep: 10_000, costSteps: 300 },
]

export const pick = <T>(items: readonly T[], random: () => number): T => items[Math.floor(random() * items.length)] as T

/** About 70 mA and 6 mA/V, 10 % apart either way; prices from 20 to 90 in steps of 5. */
export function randomPoints(random: () => number, shape: PointShape): SetPoints {
  const { size, xStep, yStep, costStep, costSteps } = shape
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
  const stepped = (middle: number, step: number) =>
    Math.max(step, Math.round((middle * (1 + 0.1 * normal())) / step) * step)
  const each = (value: () => number) => Int32Array.from({ length: size }, value)
  return {
    x: each(() => stepped(70_000, xStep)),
    y: each(() => stepped(6000, yStep)),
    cost: each(() => costStep * Math.floor(random() * costSteps)),
    price: each(() => 2000 + 500 * Math.floor(random() * 15)),
  }
}
