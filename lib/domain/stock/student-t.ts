/**
 * Two-sided 95 % points of Student's distribution by degrees of freedom: how
 * many standard uncertainties hold 95 % when the spread itself was estimated
 * from few readings. JCGM 100:2008 (GUM), table G.2, column 95 %.
 */
const POINTS = [
  ...[12.71, 4.3, 3.18, 2.78, 2.57, 2.45, 2.36, 2.31, 2.26, 2.23],
  ...[2.2, 2.18, 2.16, 2.14, 2.13, 2.12, 2.11, 2.1, 2.09, 2.09],
] as const
const AT_25 = 2.06
const AT_LEAST_30 = 2.04

/** Between tabled numbers the wider one, so that nothing is told too surely. */
export function studentT(degrees: number): number {
  const tabled = POINTS[Math.floor(degrees) - 1]
  if (degrees < 1) throw new Error(`A spread needs at least one degree of freedom, got ${degrees}`)
  if (tabled !== undefined) return tabled
  if (degrees < 25) return POINTS[POINTS.length - 1] as number
  return degrees < 30 ? AT_25 : AT_LEAST_30
}
