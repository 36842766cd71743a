/**
 * Cathode current over the 3/2 power of the voltage that draws it, A/V^1.5: the screen's,
 * or the plate's of a triode. By the 3/2 law it depends on the grid's share of that
 * voltage only, so it tells how far towards cutoff a point lies whatever its voltages.
 */
export const currentDensity = (cathodeCurrent: number, drawingVolts: number): number =>
  cathodeCurrent / Math.max(drawingVolts, 1) ** 1.5

/** How far outside the fitted rows a point lies, as a logarithm: 0 inside, ln 2 at half the coldest row. */
export function reach(density: number, coldest: number, hottest: number): number {
  if (density <= 0) return Math.log(coldest) - Math.log(Number.MIN_VALUE)
  return Math.max(0, Math.log(coldest / density), Math.log(density / hottest))
}
