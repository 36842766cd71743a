/**
 * A value with the errors it is made of.
 *
 * `errors` maps an independent source of error to its signed standard
 * contribution c_i·u_i (JCGM 100:2008, 5.1.2). Sums and products carry the map
 * along by first-order propagation; because a shared source has one key, its
 * contributions add with sign before squaring, which is the covariance term of
 * equation (13). u_c = √Σ(c_i·u_i)².
 *
 * First order: valid while relative uncertainties stay small (below some 20 %)
 * and no divisor comes near zero. Units are the caller's.
 */
export type Uncertain = { readonly value: number; readonly errors: Readonly<Record<string, number>> }

export const exactly = (value: number): Uncertain => ({ value, errors: {} })

/** `standard` is the standard uncertainty, not negative, in the unit of the value. */
export function withStandard(value: number, source: string, standard: number): Uncertain {
  if (!(standard >= 0)) throw new Error(`A standard uncertainty must not be negative, got ${standard}`)
  return standard === 0 ? exactly(value) : { value, errors: { [source]: standard } }
}

/** Limits ± halfWidth, nothing known between them: u = a/√3 (JCGM 100:2008, 4.3.7). */
export const withLimits = (value: number, source: string, halfWidth: number): Uncertain =>
  withStandard(value, source, halfWidth / Math.sqrt(3))

/** Σ cᵢ·xᵢ in its errors, with the value given: the linear step of every operation. */
function combine(value: number, terms: readonly (readonly [number, Uncertain])[]): Uncertain {
  if (!Number.isFinite(value)) throw new Error(`An uncertain value must be finite, got ${value}`)
  const errors: Record<string, number> = {}
  for (const [weight, term] of terms) {
    for (const [source, part] of Object.entries(term.errors)) errors[source] = (errors[source] ?? 0) + weight * part
  }
  return { value, errors }
}

export const add = (a: Uncertain, b: Uncertain): Uncertain =>
  combine(a.value + b.value, [
    [1, a],
    [1, b],
  ])

export const sub = (a: Uncertain, b: Uncertain): Uncertain =>
  combine(a.value - b.value, [
    [1, a],
    [-1, b],
  ])

export const mul = (a: Uncertain, b: Uncertain): Uncertain =>
  combine(a.value * b.value, [
    [b.value, a],
    [a.value, b],
  ])

export const div = (a: Uncertain, b: Uncertain): Uncertain =>
  combine(a.value / b.value, [
    [1 / b.value, a],
    [-a.value / b.value ** 2, b],
  ])

export const scale = (a: Uncertain, factor: number): Uncertain => combine(a.value * factor, [[factor, a]])

/** Any smooth function of one value, with its derivative at that value. */
export const through = (a: Uncertain, at: (x: number) => number, slope: (x: number) => number): Uncertain =>
  combine(at(a.value), [[slope(a.value), a]])

export const standardUncertainty = (a: Uncertain): number =>
  Math.sqrt(Object.values(a.errors).reduce((sum, part) => sum + part * part, 0))

export function covariance(a: Uncertain, b: Uncertain): number {
  return Object.entries(a.errors).reduce((sum, [source, part]) => sum + part * (b.errors[source] ?? 0), 0)
}

/** −1 … 1; not defined (NaN) where either value is exact. */
export const correlation = (a: Uncertain, b: Uncertain): number =>
  covariance(a, b) / (standardUncertainty(a) * standardUncertainty(b))

/**
 * Mean of repeated readings. Quantities read together under one `occasion`
 * share its sources, so their covariance is s(x̄,ȳ) of JCGM 100:2008, 5.2.3.
 */
export function meanOfReadings(readings: readonly number[], occasion: string): Uncertain {
  const n = readings.length
  if (n < 2) throw new Error(`Repeated readings need two or more values, got ${n}`)
  const mean = readings.reduce((sum, one) => sum + one, 0) / n
  const parts = readings.map((one, k): [string, number] => [`${occasion}#${k}`, (one - mean) / Math.sqrt(n * (n - 1))])
  return { value: mean, errors: Object.fromEntries(parts) }
}
