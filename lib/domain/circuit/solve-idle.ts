/**
 * Idle operating point of an output stage: every node at once.
 *
 * Tube equations: lib/domain/model/plate-curves.ts. Circuit: output-stage.ts. Method:
 * solver/wiring.ts (unknowns), damped-newton.ts, solve-currents.ts (fallback). The answer is a
 * solution whose currents balance at every node (solver/conservation.ts), or a named fault;
 * the work is bounded, and NaN is neither taken nor given.
 *
 * Valid for warm tubes without signal, plates above their knee and grids negative to
 * their cathodes: the solution says where it is not.
 */
import { fail, ok, type Result } from '@/lib/domain/result'
import { stageFault } from './check-stage'
import { type IdleSolution, idleSolution } from './idle-solution'
import type { OutputStage } from './output-stage'
import type { SolveFault } from './solve-fault'
import { WORST_IMBALANCE, worstImbalance } from './solver/conservation'
import { placeCommonNodes } from './solver/node-voltages'
import { solveCurrents } from './solver/solve-currents'
import { layWires, newWiring, type Wiring } from './solver/wiring'

/** Scratch, written anew by every call. */
const wiring: Wiring = newWiring()

/**
 * Constant currents that a supply cannot give would pull it below chassis. Tubes cannot:
 * so the tubes are left out, and the fault does not hang on the solver.
 */
function collapsed(): SolveFault | null {
  wiring.currents.fill(0)
  placeCommonNodes(wiring, wiring.currents)
  const { reservoir, screenNode, feed } = wiring
  if (reservoir < 0) return { code: 'supply-collapsed', node: 'reservoir', volts: reservoir }
  if (feed !== 'primary-tap' && screenNode < 0) {
    return { code: 'supply-collapsed', node: 'screen node', volts: screenNode }
  }
  return null
}

function warmStart(near: IdleSolution): void {
  for (let i = 0; i < near.tubes.length; i++) {
    wiring.currents[2 * i] = near.tubes[i]?.plateCurrent ?? 0
    wiring.currents[2 * i + 1] = near.tubes[i]?.screenCurrent ?? 0
  }
}

/**
 * `near`: a solution of a similar stage with as many tubes, to start from. It saves time and
 * changes nothing where there is one operating point. Several have been seen only in
 * random stages with immense shared resistances: there the one found depends on the start.
 */
export function solveIdle(stage: OutputStage, near?: IdleSolution): Result<IdleSolution, SolveFault> {
  const fault = stageFault(stage)
  if (fault) return fail(fault)
  layWires(wiring, stage)
  const empty = collapsed()
  if (empty) return fail(empty)
  const warm = near !== undefined && near.tubes.length === stage.tubes.length
  if (warm) warmStart(near)
  const search = solveCurrents(wiring, warm)
  const imbalance = worstImbalance(wiring)
  if (!search.converged || !(imbalance <= WORST_IMBALANCE)) {
    return fail({ code: 'did-not-converge', iterations: search.steps, worstImbalance: imbalance })
  }
  return ok(idleSolution(wiring, stage, search, imbalance))
}
