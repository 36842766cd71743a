/**
 * Follows the operating point round a fold while the tubes' strength is raised to 1.
 *
 * Where a circuit has several operating points, the path of solutions over strength can
 * turn back before it goes on: no step in strength gets past. So strength becomes an
 * unknown, and the step is taken along the path (pseudo-arclength continuation; Keller,
 * "Numerical Solution of Bifurcation and Nonlinear Eigenvalue Problems", 1977). Lengths
 * are measured in currents as a share of what they are, and in strength.
 *
 * The path starts at no current and cannot run off to infinity, since every current is
 * bounded by its resistances or its tube: in general it arrives. The work is bounded.
 */
import { CURVE_NUMBERS } from '@/lib/domain/model/plate-curves'
import { type Descent, descend } from './damped-newton'
import { at, solveInPlace } from './dense-lu'
import { fillJacobian } from './jacobian'
import { placeNodes } from './node-voltages'
import { MOST_UNKNOWNS, type Wiring } from './wiring'

const STRIDE = MOST_UNKNOWNS + 1
const MOST_ARCS = 4000
const MOST_CORRECTIONS = 8
const FIRST_ARC = 0.01
const LONGEST_ARC = 0.5
const SHORTEST_ARC = 1e-9
/** 1 over the cosine, so 60°. */
const SHARPEST_BEND = 2
const FINEST_BEND = 1e-6
/** Of the length of an arc. */
const CLOSE = 1e-6
/** Currents below this share of the largest are measured by it. */
const SMALL_SHARE = 1e-3

const bordered = new Float64Array(STRIDE * STRIDE)
const change = new Float64Array(STRIDE)
/** Currents, then strength. */
const place = new Float64Array(STRIDE)
const guess = new Float64Array(STRIDE)
const direction = new Float64Array(STRIDE)
const unit = new Float64Array(STRIDE)

/** Takes the units of length from the place reached. */
function setUnits(unknowns: number): void {
  let largest = 1e-12
  for (let k = 0; k < unknowns; k++) largest = Math.max(largest, Math.abs(at(place, k)))
  for (let k = 0; k < unknowns; k++) unit[k] = Math.abs(at(place, k)) + SMALL_SHARE * largest
  unit[unknowns] = 1
}

/** Jacobian with strength as the last column and the direction as the last row. Everything in units of length. */
function fillBordered(wiring: Wiring, unknowns: number): void {
  fillJacobian(wiring, at(guess, unknowns), bordered, STRIDE)
  for (let row = 0; row < unknowns; row++) {
    for (let k = 0; k < unknowns; k++) bordered[row * STRIDE + k] = at(bordered, row * STRIDE + k) * at(unit, k)
    bordered[row * STRIDE + unknowns] = -at(wiring.curves, (row >> 1) * CURVE_NUMBERS + 4 * (row & 1))
  }
  for (let k = 0; k <= unknowns; k++) bordered[unknowns * STRIDE + k] = at(direction, k)
}

function evaluate(wiring: Wiring, unknowns: number): void {
  placeNodes(wiring, guess, at(guess, unknowns))
}

/** What `bendAt` found: the length is 1 over the cosine of the bend. */
const bend = { length: 0, determinant: 0 }

/**
 * The path's direction at `guess`, in the sense of the direction before, into `change`.
 * The determinant of the bordered matrix keeps its sign along the path as long as its
 * last row points forward: a change of sign is a hairpin taken in one step.
 */
function bendAt(wiring: Wiring, unknowns: number): void {
  evaluate(wiring, unknowns)
  fillBordered(wiring, unknowns)
  change.fill(0)
  change[unknowns] = 1
  bend.determinant = solveInPlace(bordered, change, unknowns + 1, STRIDE)
  let square = 0
  for (let k = 0; k <= unknowns; k++) square += at(change, k) ** 2
  bend.length = bend.determinant === 0 ? Number.NaN : Math.sqrt(square)
}

/** Whether the bend at `guess` is gentle enough to go on. A hairpin too fine for any arc is turned by force. */
function isGentle(wiring: Wiring, unknowns: number, arc: number, forward: number): boolean {
  bendAt(wiring, unknowns)
  if (!(bend.length <= SHARPEST_BEND)) return false
  if (bend.determinant === forward) return true
  if (arc > FINEST_BEND) return false
  for (let k = 0; k <= unknowns; k++) change[k] = -at(change, k)
  return true
}

/** Makes `guess` the place reached and `change` the direction, in the units that fit there. */
function moveOn(unknowns: number): void {
  for (let k = 0; k <= unknowns; k++) direction[k] = at(change, k) * at(unit, k)
  place.set(guess)
  setUnits(unknowns)
  let square = 0
  for (let k = 0; k <= unknowns; k++) {
    direction[k] = at(direction, k) / at(unit, k)
    square += at(direction, k) ** 2
  }
  for (let k = 0; k <= unknowns; k++) direction[k] = at(direction, k) / Math.sqrt(square)
}

/** From `guess` back to the path, at right angles to the direction. Leaves the path's point in `guess`. */
function correct(wiring: Wiring, unknowns: number, arc: number): boolean {
  for (let count = 0; count < MOST_CORRECTIONS; count++) {
    evaluate(wiring, unknowns)
    fillBordered(wiring, unknowns)
    for (let k = 0; k < unknowns; k++) change[k] = -at(wiring.misfit, k)
    change[unknowns] = 0
    if (!solveInPlace(bordered, change, unknowns + 1, STRIDE)) return false
    let longest = 0
    for (let k = 0; k <= unknowns; k++) {
      guess[k] = at(guess, k) + at(change, k) * at(unit, k)
      longest = Math.max(longest, Math.abs(at(change, k)))
    }
    if (!(longest <= arc / 2)) return false
    if (longest <= CLOSE * arc) return true
  }
  return false
}

/** Strength 1 lies on the arc ahead: Newton from where the arc meets it. */
function arrive(wiring: Wiring, unknowns: number, outcome: Descent): boolean {
  const share = (1 - at(place, unknowns)) / (at(guess, unknowns) - at(place, unknowns))
  for (let k = 0; k < unknowns; k++) {
    wiring.currents[k] = at(place, k) + share * (at(guess, k) - at(place, k))
  }
  descend(wiring, 1, outcome)
  return outcome.converged
}

/** Leaves currents and voltages in the wiring. */
export function followPath(wiring: Wiring, outcome: Descent): void {
  const unknowns = 2 * wiring.count
  outcome.converged = false
  const forward = start(wiring, unknowns)
  let arc = FIRST_ARC
  for (let count = 0; count < MOST_ARCS && arc >= SHORTEST_ARC; count++) {
    outcome.steps++
    for (let k = 0; k <= unknowns; k++) guess[k] = at(place, k) + arc * at(direction, k) * at(unit, k)
    const onPath = correct(wiring, unknowns, arc) && at(guess, unknowns) >= 0
    const beyond = at(guess, unknowns) >= 1
    if (onPath && beyond && arrive(wiring, unknowns, outcome)) return
    if (!onPath || beyond || !isGentle(wiring, unknowns, arc, forward)) {
      arc /= 3
      continue
    }
    moveOn(unknowns)
    arc = Math.min(LONGEST_ARC, 1.5 * arc)
  }
}

/** No current, no strength, and more of it ahead. Returns the determinant's sign there. */
function start(wiring: Wiring, unknowns: number): number {
  place.fill(0)
  guess.fill(0)
  direction.fill(0)
  direction[unknowns] = 1
  setUnits(unknowns)
  bendAt(wiring, unknowns)
  moveOn(unknowns)
  return bend.determinant
}
