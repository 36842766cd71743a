/**
 * Smooth stand-ins for "nothing below zero" and "nothing below cutoff".
 *
 *   softplus(u) = ln(1 + eᵘ),   logistic(u) = its slope.
 *
 * `raised(v)` is v for a positive voltage and dies away below zero, so that the
 * tube equations, written for positive plates and screens, stay defined and
 * differentiable everywhere a solver may step:
 *   raised(v) = s·softplus(v/s),  s = 0.1 V.
 * It differs from v by 5e-6 V at 1 V and by nothing a double can hold above 4 V.
 */
export const EDGE_VOLTS = 0.1

/** Beyond this the equations would overflow a double; no bench has such a voltage. */
export const WIDEST_VOLTS = 1e6

/** Bounds a finite voltage. NaN passes through: whoever hands one in has a broken assumption. */
export const bounded = (volts: number): number => (volts > WIDEST_VOLTS ? WIDEST_VOLTS : Math.max(volts, -WIDEST_VOLTS))

export const softplus = (u: number): number => (u > 0 ? u + Math.log1p(Math.exp(-u)) : Math.log1p(Math.exp(u)))

export function logistic(u: number): number {
  if (u >= 0) return 1 / (1 + Math.exp(-u))
  const power = Math.exp(u)
  return power / (1 + power)
}

/** Past 40 edges the correction is below the last bit, and two exponentials are saved. */
export const raised = (volts: number): number =>
  volts > 40 * EDGE_VOLTS ? volts : EDGE_VOLTS * softplus(volts / EDGE_VOLTS)

export const raisedSlope = (volts: number): number => (volts > 40 * EDGE_VOLTS ? 1 : logistic(volts / EDGE_VOLTS))
