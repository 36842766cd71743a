/**
 * Which readings of a run lie far from the others.
 *
 *   distance = |x − median| / (1.4826 × MAD),   MAD = median of |x − median|
 *
 * An outlier is farther than 3.5. Median and MAD are not moved by the odd ones
 * themselves, as mean and standard deviation are. The factor 1.4826 makes the
 * scale that of a normal spread. Source: B. Iglewicz and D. Hoaglin, "How to
 * Detect and Handle Outliers" (1993), as given in the NIST/SEMATECH e-Handbook
 * of Statistical Methods, 1.3.5.17 (from memory).
 *
 * Below five readings there is no run to lie outside of, and nothing is told.
 * When more than half of the readings are alike the MAD is nothing, and every
 * other reading would be infinitely far; the scale is therefore never less than
 * 2 % of the median, about what a bench tester repeats to (common practice, no source).
 */
const NORMAL_SCALE = 1.4826
export const FAR = 3.5
export const LEAST_RUN = 5
const LEAST_SCALE = 0.02

export type RobustSpread = { readonly median: number; readonly scale: number }

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const middle = sorted.length >> 1
  const upper = sorted[middle]
  if (upper === undefined) throw new Error('A median needs at least one value, got none')
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] as number) + upper) / 2
}

/** Null: fewer readings than a run has. */
export function robustSpread(values: readonly number[]): RobustSpread | null {
  if (values.length < LEAST_RUN) return null
  const middle = median(values)
  const deviation = median(values.map((value) => Math.abs(value - middle)))
  return { median: middle, scale: Math.max(NORMAL_SCALE * deviation, LEAST_SCALE * Math.abs(middle)) }
}

export const isFar = (value: number, { median: middle, scale }: RobustSpread): boolean =>
  Math.abs(value - middle) > FAR * scale
