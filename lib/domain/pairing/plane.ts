/**
 * Tubes as points of a plane of whole numbers, and what a pair of them costs.
 *
 *   distance = |x1 - x2| + |y1 - y2|
 *
 * Two points may be paired when they differ by no more than `widthX` and
 * `widthY`; a point left alone costs `singleCost`. All sums stay whole
 * numbers, far below 2^53.
 */
export type Plane = {
  readonly x: Int32Array
  /** As long as `x`. */
  readonly y: Int32Array
  /** Inclusive. */
  readonly widthX: number
  readonly widthY: number
  /** At least 0. */
  readonly singleCost: number
}

/** Twice the widest permitted distance must fit 32 bits. */
const WIDEST = 2 ** 28

export function distanceIn({ x, y }: Plane, a: number, b: number): number {
  return Math.abs((x[a] as number) - (x[b] as number)) + Math.abs((y[a] as number) - (y[b] as number))
}

export function permittedIn({ x, y, widthX, widthY }: Plane, a: number, b: number): boolean {
  return (
    Math.abs((x[a] as number) - (x[b] as number)) <= widthX && Math.abs((y[a] as number) - (y[b] as number)) <= widthY
  )
}

export function assertPlane({ x, y, widthX, widthY, singleCost }: Plane): void {
  if (x.length !== y.length) throw new Error(`${x.length} values of x but ${y.length} of y`)
  for (const [name, value] of Object.entries({ widthX, widthY })) {
    if (!Number.isInteger(value) || value < 0 || value > WIDEST) throw new Error(`${name} is ${value}, not 0 to 2^28`)
  }
  // Sums of doubled duals must stay whole numbers of a double.
  if (!Number.isInteger(singleCost) || singleCost < 0 || singleCost * x.length > 2 ** 50) {
    throw new Error(`singleCost is ${singleCost}, too much for ${x.length} points or not a whole number`)
  }
}
