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
