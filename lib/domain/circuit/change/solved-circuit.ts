/**
 * A changed circuit solved, with the bands of every quantity (circuit-bands.ts).
 *
 * A doubt about the grid volts reaches only tubes that were not read there: for one that
 * was, other grid volts would mean another tube, so its current at them stays what was
 * read. Its strength is moved against the grid by as much.
 */
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import { circuitBands, type Doubt, type PartDoubt, type TubeBands } from '@/lib/domain/circuit/circuit-bands'
import type { IdleSolution, TubeIdle } from '@/lib/domain/circuit/idle-solution'
import type { OutputStage, OutputTube } from '@/lib/domain/circuit/output-stage'
import { solveIdle } from '@/lib/domain/circuit/solve-idle'
import { predictedIdle } from '@/lib/domain/model/predicted-idle'
import { scaledTube } from '@/lib/domain/model/tube-scales'
import { fail, ok, type Result } from '@/lib/domain/result'
import { volts } from '@/lib/domain/units'
import type { ChangedCircuit, SeatedTube, WhatIfFault } from './changed-circuit'

export type SolvedSeat = {
  readonly seat: SeatedTube
  readonly idle: TubeIdle
  readonly bands: TubeBands
  readonly doubt: Doubt
}

export type SolvedCircuit = {
  readonly changed: ChangedCircuit
  readonly solution: IdleSolution
  readonly seats: readonly SolvedSeat[]
}

function heldAgainstGrid(one: OutputTube, seat: SeatedTube | undefined, step: number): OutputTube {
  if (!seat?.isFitted || one.gridSupply === null) return one
  return { ...one, tube: scaledTube(one.tube, [-seat.socket.gripPerVolt * step, 0, 0]) }
}

const gridMoved = ({ stage, seats }: ChangedCircuit, readFactor: number, step: number): OutputStage => ({
  ...stage,
  gridSupplies: stage.gridSupplies.map((one) => ({ ...one, voltage: volts(one.voltage + step) })),
  tubes: stage.tubes.map((one, i) => heldAgainstGrid(one, seats[i], step * readFactor)),
})

/** Grid volts that a change sets are what they are set to: no doubt of them is left. */
function partDoubts(circuit: AmpCircuit, changed: ChangedCircuit, gridIsSet: boolean): PartDoubt[] {
  const { gridStandard, stage } = circuit
  if (gridStandard === null || gridStandard <= 0) return []
  if (gridIsSet && changed.seats.every(({ isFitted }) => !isFitted)) return []
  const moved = (step: number): OutputStage =>
    gridIsSet ? strengthsMoved(changed, stage.mainsFactor, step) : gridMoved(changed, stage.mainsFactor, step)
  return [{ name: 'grid volts', standard: gridStandard, moved }]
}

/** The doubt of the grid volts they were read at stays with the tubes that were read. */
const strengthsMoved = ({ stage, seats }: ChangedCircuit, readFactor: number, step: number): OutputStage => ({
  ...stage,
  tubes: stage.tubes.map((one, i) => heldAgainstGrid(one, seats[i], step * readFactor)),
})

export function solvedCircuit(
  circuit: AmpCircuit,
  changed: ChangedCircuit,
  gridIsSet: boolean,
): Result<SolvedCircuit, WhatIfFault> {
  const solved = solveIdle(changed.stage)
  if (!solved.ok) return fail({ code: 'no-solution', fault: solved.fault })
  const solution = solved.value
  const doubts = changed.seats.map(
    ({ tube }, i): Doubt => ({ tube, predicted: predictedIdle(tube, idleAt(solution, i)) }),
  )
  const bands = circuitBands(changed.stage, solution, doubts, partDoubts(circuit, changed, gridIsSet))
  if (!bands.ok) return fail({ code: 'no-solution', fault: bands.fault })
  const seats = changed.seats.map((seat, i) => {
    const [doubt, band] = [doubts[i], bands.value[i]]
    if (!doubt || !band) throw new Error(`Tube ${i} has no band`)
    return { seat, idle: idleAt(solution, i), doubt, bands: band }
  })
  return ok({ changed, solution, seats })
}

function idleAt(solution: IdleSolution, i: number): TubeIdle {
  const idle = solution.tubes[i]
  if (!idle) throw new Error(`Tube ${i} was not solved`)
  return idle
}
