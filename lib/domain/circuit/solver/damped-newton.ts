/**
 * Newton's method on the misfits, with the analytic Jacobian (jacobian.ts). A full step is tried first and halved until the
 * sum of squares falls (Armijo's rule; Nocedal and Wright, "Numerical Optimization",
 * section 3.1). Everything is bounded: it ends after MOST_STEPS at the latest.
 */
import { at, solveInPlace } from './dense-lu'
import { fillJacobian } from './jacobian'
import { placeNodes } from './node-voltages'
import { MOST_UNKNOWNS, NO_CURRENT, type Wiring } from './wiring'

const MOST_STEPS = 150
const MOST_HALVINGS = 30
const ARMIJO = 1e-4
/** Of the current itself: from here on a step is taken whole. */
const SMALL_STEP = 1e-8
/** Misfit as a share of the current. Reached, nothing more is to be gained. */
const SETTLED = 1e-12
/** Where the last bits of a double allow no better; whether it is enough, conservation.ts decides. */
const SETTLED_AT_WORST = 1e-6
/** Whole steps after the first small one. */
const MOST_POLISHES = 5
/** A. Well below what conservation.ts lets pass, for sums of sixteen. */
const NO_MISFIT = 0.01 * NO_CURRENT

const jacobian = new Float64Array(MOST_UNKNOWNS * MOST_UNKNOWNS)
const step = new Float64Array(MOST_UNKNOWNS)
const trial = new Float64Array(MOST_UNKNOWNS)

function solveStep(wiring: Wiring, strength: number): boolean {
  const unknowns = 2 * wiring.count
  fillJacobian(wiring, strength, jacobian, MOST_UNKNOWNS)
  for (let k = 0; k < unknowns; k++) step[k] = -at(wiring.misfit, k)
  return solveInPlace(jacobian, step, unknowns, MOST_UNKNOWNS) !== 0
}

function isSmall(wiring: Wiring): boolean {
  for (let k = 0; k < 2 * wiring.count; k++) {
    if (!(Math.abs(at(step, k)) <= SMALL_STEP * Math.abs(at(trial, k)) + NO_MISFIT)) return false
  }
  return true
}

function isSettled(wiring: Wiring, share: number): boolean {
  for (let k = 0; k < 2 * wiring.count; k++) {
    if (!(Math.abs(at(wiring.misfit, k)) <= share * Math.abs(at(trial, k)) + NO_MISFIT)) return false
  }
  return true
}

function tryStep(wiring: Wiring, share: number, strength: number): number {
  for (let k = 0; k < 2 * wiring.count; k++) trial[k] = at(wiring.currents, k) + share * at(step, k)
  return placeNodes(wiring, trial, strength)
}

function keepTrial(wiring: Wiring): void {
  for (let k = 0; k < 2 * wiring.count; k++) wiring.currents[k] = at(trial, k)
}

export type Descent = { converged: boolean; steps: number }

/** From and to `wiring.currents`. The voltages left behind belong to those currents. */
export function descend(wiring: Wiring, strength: number, outcome: Descent): void {
  outcome.converged = false
  let polishes = 0
  let squares = placeNodes(wiring, wiring.currents, strength)
  for (let count = 1; count <= MOST_STEPS; count++) {
    outcome.steps++
    if (!solveStep(wiring, strength)) return
    let share = 1
    let next = tryStep(wiring, share, strength)
    if (isSettled(wiring, SETTLED)) {
      keepTrial(wiring)
      outcome.converged = true
      return
    }
    // At the end of what a double resolves the sum of squares need not fall any more.
    if (polishes < MOST_POLISHES && isSmall(wiring)) {
      polishes++
      keepTrial(wiring)
      squares = next
      if (polishes < MOST_POLISHES || !isSettled(wiring, SETTLED_AT_WORST)) continue
      outcome.converged = true
      return
    }
    for (let halving = 0; !(next <= squares * (1 - 2 * ARMIJO * share)); halving++) {
      if (halving === MOST_HALVINGS) return
      share /= 2
      next = tryStep(wiring, share, strength)
    }
    keepTrial(wiring)
    squares = next
  }
}
