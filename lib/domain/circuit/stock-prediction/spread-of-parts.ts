/**
 * Doubts of the circuit's parts (circuit-bands.ts, PartDoubt): the stage with the quantity
 * moved either way is laid once; at a solution the misfits of both, at the same currents,
 * say how the quantity pulls.
 */
import type { PartDoubt } from '@/lib/domain/circuit/circuit-bands'
import { at } from '@/lib/domain/circuit/solver/dense-lu'
import { placeNodes } from '@/lib/domain/circuit/solver/node-voltages'
import { layWires, newWiring, type Wiring } from '@/lib/domain/circuit/solver/wiring'
import type { AmplifyingParameters } from '@/lib/domain/model/plate-curves'
import { ANSWERS, type Desk } from './desk'

/** Of its standard uncertainty, as in circuit-bands.ts. */
const STEP = 0.1

export type MovedPart = { readonly up: Wiring; readonly down: Wiring }

function laid(part: PartDoubt, step: number): Wiring {
  const wiring = newWiring()
  layWires(wiring, part.moved(step))
  return wiring
}

export const movedPart = (part: PartDoubt): MovedPart => ({
  up: laid(part, STEP * part.standard),
  down: laid(part, -STEP * part.standard),
})

export function fillMovedPart(part: MovedPart, place: number, tube: AmplifyingParameters): void {
  part.up.parameters[place] = tube
  part.down.parameters[place] = tube
}

/** Before the answers of any socket are asked for. */
export function placeMovedPart({ wiring }: Desk, { up, down }: MovedPart): void {
  placeNodes(up, wiring.currents, 1)
  placeNodes(down, wiring.currents, 1)
}

const plateToCathode = (wiring: Wiring, i: number): number =>
  at(wiring.plateNode, wiring.side[i] as number) - at(wiring.cathode, i)
const screenToCathode = (wiring: Wiring, i: number): number => at(wiring.screen, i) - at(wiring.cathode, i)
const gridToCathode = (wiring: Wiring, i: number): number => at(wiring.grid, i) - at(wiring.cathode, i)

/** What the part does to the answer at socket `own` with all currents held, for both its steps together. */
function directly(desk: Desk, { up, down }: MovedPart, answer: number, own: number): number {
  const plate = plateToCathode(up, own) - plateToCathode(down, own)
  if (answer === ANSWERS.plateToCathode) return plate
  if (answer === ANSWERS.plateDissipation) return plate * at(desk.wiring.currents, 2 * own)
  if (answer !== ANSWERS.transconductance) return 0
  const screen = screenToCathode(up, own) - screenToCathode(down, own)
  const grid = gridToCathode(up, own) - gridToCathode(down, own)
  return at(desk.gmBy, 0) * plate + at(desk.gmBy, 1) * screen + at(desk.gmBy, 2) * grid
}

/** Variance of one answer, in its own unit. */
export function varianceByParts(
  desk: Desk,
  parts: readonly MovedPart[],
  from: number,
  answer: number,
  own: number,
): number {
  let variance = 0
  for (const part of parts) {
    let moved = directly(desk, part, answer, own)
    for (let k = 0; k < 2 * desk.wiring.count; k++) {
      moved -= at(desk.pulls, from + k) * (at(part.up.misfit, k) - at(part.down.misfit, k))
    }
    variance += (moved / (2 * STEP)) ** 2
  }
  return variance
}
