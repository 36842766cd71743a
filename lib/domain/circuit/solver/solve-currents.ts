/**
 * From the wiring to the operating point, never without end.
 *
 * First Newton from the currents given, then from a guess, then source stepping: the
 * tubes' strength is raised from nothing, where the answer is known (no current, every
 * node at its open voltage), to 1. Unlike lowered supplies, every circuit on the way is
 * one with positive plates and screens. The path is followed round its bends (follow-path.ts).
 */
import { CURVE_NUMBERS, diodeDrop } from '@/lib/domain/model/plate-curves'
import { type Descent, descend } from './damped-newton'
import { at } from './dense-lu'
import { followPath } from './follow-path'
import { placeNodes } from './node-voltages'
import { MOST_UNKNOWNS, type Wiring } from './wiring'

export type Search = Descent & { stepped: boolean }

/** dV/dI of the supply as a chord, over all the current that the tubes would draw if nothing gave way. */
function supplyChord(wiring: Wiring): number {
  if (wiring.rectifier === null) return wiring.supplyResistance
  let current = wiring.supplyCurrent
  for (let i = 0; i < wiring.count; i++) {
    current += at(wiring.curves, i * CURVE_NUMBERS) + at(wiring.curves, i * CURVE_NUMBERS + 4)
  }
  return wiring.supplyResistance + (current > 0 ? diodeDrop(wiring.rectifier, current).drop / current : 0)
}

/** What each tube would pass if the others were like it, by one Newton step from no current. */
function guess(wiring: Wiring): void {
  wiring.currents.fill(0)
  placeNodes(wiring, wiring.currents, 1)
  const { curves, plateBy, screenBy, cathodeBy } = wiring
  const chord = supplyChord(wiring)
  for (let i = 0; i < wiring.count; i++) {
    const from = i * CURVE_NUMBERS
    const [byPlate, byScreen, byGrid] = [at(curves, from + 1), at(curves, from + 2), at(curves, from + 3)]
    let feedback = wiring.count * chord * (byPlate + byScreen)
    for (let j = 0; j < wiring.count; j++) {
      const place = i * MOST_UNKNOWNS + 2 * j
      feedback += byPlate * at(plateBy, place) + byScreen * at(screenBy, place) + byGrid * at(cathodeBy, place)
    }
    const share = 1 / (1 + Math.max(0, feedback))
    wiring.currents[2 * i] = share * at(curves, from)
    wiring.currents[2 * i + 1] = share * at(curves, from + 4)
  }
}

/** Leaves currents and voltages in the wiring. `warm`: they already hold a good guess. */
export function solveCurrents(wiring: Wiring, warm: boolean): Search {
  const search: Search = { converged: false, steps: 0, stepped: false }
  if (warm) descend(wiring, 1, search)
  if (search.converged) return search
  guess(wiring)
  descend(wiring, 1, search)
  if (search.converged) return search
  search.stepped = true
  followPath(wiring, search)
  return search
}
