/** Electrode voltages that given tube currents leave: the wiring alone, whatever the tubes would pass there. */

import type { OutputStage } from '@/lib/domain/circuit/output-stage'
import { at } from './dense-lu'
import { placeNodes } from './node-voltages'
import { layWires, newWiring } from './wiring'

export type TubeCurrents = { readonly plate: number; readonly screen: number }
/** Against chassis. */
export type TubeVoltages = {
  readonly plate: number
  readonly screen: number
  readonly cathode: number
  readonly grid: number
}

/** In the order of the stage's tubes, as the currents are. Only for a stage that `stageFault` let pass. */
export function voltagesAt(stage: OutputStage, currents: readonly TubeCurrents[]): TubeVoltages[] {
  const wiring = newWiring()
  layWires(wiring, stage)
  for (const [i, { plate, screen }] of currents.entries()) {
    wiring.currents[2 * i] = plate
    wiring.currents[2 * i + 1] = screen
  }
  placeNodes(wiring, wiring.currents, 1)
  return currents.map((_, i) => ({
    plate: at(wiring.plateNode, wiring.side[i] ?? 0),
    screen: at(wiring.screen, i),
    cathode: at(wiring.cathode, i),
    grid: at(wiring.grid, i),
  }))
}
