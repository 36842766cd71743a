/**
 * How the answers at one socket move with what any tube passes of its own accord.
 *
 * At the solution F(x) = x − I(V(x)) = 0. A tube whose current at fixed voltages rises by b
 * moves the currents by dx = J⁻¹·b, J = ∂F/∂x (solver/jacobian.ts), and an answer y with the
 * gradient g by gᵀ·J⁻¹·b. So Jᵀ·λ = g is solved once per answer with the factors of J, and
 * λ·b is the slope for whatever tube and scale b stands for (the adjoint method; implicit
 * differentiation, Nocedal and Wright, "Numerical Optimization", chapter 8).
 */
import { at } from '@/lib/domain/circuit/solver/dense-lu'
import { fillJacobian } from '@/lib/domain/circuit/solver/jacobian'
import { MOST_UNKNOWNS } from '@/lib/domain/circuit/solver/wiring'
import { ANSWERS, type Desk } from './desk'
import { gmSlopes } from './gm-slopes'
import { factor, solveTransposed } from './lu-factors'
import { gridToCathodeOf, plateToCathodeOf, screenToCathodeOf } from './spread-of-tubes'

const row = (answer: number): number => answer * MOST_UNKNOWNS

/** At the solution that the wiring holds. False: the circuit stands on an edge and has no slopes. */
export function factorJacobian(desk: Desk): boolean {
  fillJacobian(desk.wiring, 1, desk.factors, MOST_UNKNOWNS)
  return factor(desk.factors, desk.exchanges, 2 * desk.wiring.count, MOST_UNKNOWNS)
}

/** The supply's own slope comes to what wiring.ts lays, as in jacobian.ts. */
function layVolts(desk: Desk, own: number): void {
  const { wiring, plateVolts, screenVolts, gridVolts } = desk
  const hangs = wiring.feed === 'own-supply' ? 0 : 1
  for (let k = 0; k < 2 * wiring.count; k++) {
    const place = own * MOST_UNKNOWNS + k
    const supply = wiring.supplySlope * (k % 2 === 0 ? 1 : hangs)
    plateVolts[k] = -at(wiring.plateBy, place) - supply
    screenVolts[k] = -at(wiring.screenBy, place) - hangs * supply
    gridVolts[k] = -at(wiring.cathodeBy, place)
  }
}

/** Into `desk.pulls`, and the slopes of gm into `desk.gmBy`. */
export function layPulls(desk: Desk, own: number): void {
  const { wiring, pulls, factors, exchanges, plateVolts, screenVolts, gridVolts, gmBy } = desk
  const parameters = wiring.parameters[own]
  if (!parameters) throw new Error(`Tube ${own} of ${wiring.count} is missing`)
  const plate = plateToCathodeOf(desk, own)
  const current = at(wiring.currents, 2 * own)
  gmSlopes(desk, parameters, plate, screenToCathodeOf(desk, own), gridToCathodeOf(desk, own))
  layVolts(desk, own)
  const unknowns = 2 * wiring.count
  const byPlate = at(gmBy, 0)
  const byScreen = at(gmBy, 1)
  const byGrid = at(gmBy, 2)
  for (let k = 0; k < unknowns; k++) {
    pulls[row(ANSWERS.plateCurrent) + k] = k === 2 * own ? 1 : 0
    pulls[row(ANSWERS.screenCurrent) + k] = k === 2 * own + 1 ? 1 : 0
    pulls[row(ANSWERS.plateToCathode) + k] = at(plateVolts, k)
    pulls[row(ANSWERS.transconductance) + k] =
      byPlate * at(plateVolts, k) + byScreen * at(screenVolts, k) + byGrid * at(gridVolts, k)
  }
  for (let answer = 0; answer < ANSWERS.plateDissipation; answer++) {
    solveTransposed(factors, exchanges, unknowns, MOST_UNKNOWNS, pulls, row(answer))
  }
  for (let k = 0; k < unknowns; k++) {
    pulls[row(ANSWERS.plateDissipation) + k] =
      plate * at(pulls, row(ANSWERS.plateCurrent) + k) + current * at(pulls, row(ANSWERS.plateToCathode) + k)
  }
}
