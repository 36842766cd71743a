/**
 * Half-width of the 95 % band of a value whose largest single error may be one that is only
 * known to lie within limits.
 *
 * A sum of many small errors is normal, and its band is k·u with k = 2, which holds 95.45 %
 * of it (JCGM 100:2008, table G.1). Where one rectangular error ± a leads, k = 2 would hold
 * every case: its own 95.45 % end at 0.9545·a = 1.65·u (EA-4/02, annex on the dominant
 * term; JCGM 100:2008, G.1.3: the convolution is to be used). So the largest rectangular
 * error is kept as it is, all the others together are taken as normal with s, and the
 * half-width t solves
 *   P(|R(a) + N(s)| ≤ t) = (s/a)·[G((t + a)/s) − G((t − a)/s)] − 1 = 0.9545,
 *   G(z) = ∫Φ = z·Φ(z) + φ(z).
 * With several rectangular errors the band then holds 94.9 to 95.8 % of them (coverage.test.ts).
 */

/** Share of a normal distribution within two standard deviations. */
export const COVERED = 0.9544997361036416
/** k of a normal distribution. */
const NORMAL_FACTOR = 2
/** Of s: a smaller rectangular error changes the factor by less than 1e-4. */
const NEGLIGIBLE = 0.3
/** Of a: s this small leaves the rectangle as it is to 1e-6. */
const SHARP = 1e-3
const STEPS = 60
const SETTLED = 1e-12

const density = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)

/** Φ, by the series of G. Marsaglia, "Evaluating the Normal Distribution", J. Stat. Software 11(4), 2004. */
export function normalShareBelow(z: number): number {
  if (z < -8) return 0
  if (z > 8) return 1
  let [sum, term] = [z, z]
  for (let n = 3; Math.abs(term) > 1e-17 * Math.abs(sum); n += 2) {
    term *= (z * z) / n
    sum += term
  }
  return 0.5 + sum * density(z)
}

const integrated = (z: number): number => z * normalShareBelow(z) + density(z)

/** P(|R(a) + N(s)| ≤ t), both above zero. */
export const shareWithin = (t: number, a: number, s: number): number =>
  (s / a) * (integrated((t + a) / s) - integrated((t - a) / s)) - 1

/** How much the share rises per unit of t: falling in t, so Newton's steps from below never pass the root. */
const shareSlope = (t: number, a: number, s: number): number =>
  (normalShareBelow((t + a) / s) - normalShareBelow((t - a) / s)) / a

/** `a`: half-width of the leading rectangular error, `s`: standard uncertainty of all the others together. */
export function halfWidth(a: number, s: number): number {
  const u = Math.sqrt((a * a) / 3 + s * s)
  if (a <= NEGLIGIBLE * s) return NORMAL_FACTOR * u
  if (s <= SHARP * a) return COVERED * a
  let t = COVERED * a
  if (shareWithin(t, a, s) > COVERED) t = 0
  for (let step = 0; step < STEPS; step++) {
    const by = (COVERED - shareWithin(t, a, s)) / shareSlope(t, a, s)
    t += by
    if (Math.abs(by) <= SETTLED * u) break
  }
  return t
}
