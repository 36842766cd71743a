/**
 * Share of a normal distribution below a value.
 *
 * By the expansion 1/2 + p(z) * (z + z^3/3 + z^5/(3*5) + …), which is exact in
 * the limit and free of cancellation; beyond 7 standard deviations the share
 * is taken as 0 or 1 (off by less than 2e-12). Abramowitz and Stegun,
 * Handbook of Mathematical Functions, 26.2.11.
 */
const FAR = 7

/** `deviation`: standard deviation, above 0. */
export function shareBelow(value: number, mean: number, deviation: number): number {
  const z = (value - mean) / deviation
  if (z <= -FAR) return 0
  if (z >= FAR) return 1
  let term = z
  let sum = z
  for (let odd = 3; Math.abs(term) > 1e-17 * Math.abs(sum); odd += 2) {
    term *= (z * z) / odd
    sum += term
  }
  return 0.5 + (sum * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI)
}
