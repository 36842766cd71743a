/** Idle of proposed tubes in a whole output stage: every node solved at once, bands through the circuit. */

import { type Faults, together } from '@/lib/calc/calculator'
import { bandFigures, figure } from '@/lib/calc/output/figure'
import { DEFAULT_IDLE_WINDOWS, idleVerdict, idleWindow } from '@/lib/domain/bias/idle-verdict'
import type { Band } from '@/lib/domain/circuit/band'
import { circuitBands, type Doubt, type TubeBands } from '@/lib/domain/circuit/circuit-bands'
import type { IdleSolution, TubeIdle } from '@/lib/domain/circuit/idle-solution'
import { solveIdle } from '@/lib/domain/circuit/solve-idle'
import { predictedIdle } from '@/lib/domain/model/predicted-idle'
import { fail, ok, type Result } from '@/lib/domain/result'
import { type Words, wordsFor } from '@/lib/domain/words'
import { curveCautions, READ_IT, solutionCaution } from './predict-cautions'
import type { InCircuit } from './predict-input'
import { platePercent, predictedFigures } from './predicted-figures'
import { proposedStage } from './proposed-stage'
import { type ProposedTube, proposedTube, tubeReport } from './proposed-tube'
import { solveFault } from './solve-faults'

type Fitted = {
  readonly given: InCircuit['sockets'][number]
  readonly proposed: ProposedTube
  readonly doubt: Doubt
  readonly idle: TubeIdle
  readonly bands: TubeBands
}

function verdict(percent: Band | null, { given }: Fitted, service: InCircuit['service']) {
  const bias = given.biasResistor === undefined ? 'grid-supplied' : 'cathode-resistor'
  const window = idleWindow({ bias, service, windows: DEFAULT_IDLE_WINDOWS })
  const half = percent ? (percent.high - percent.low) / 2 : 0
  const banded = percent && { ...percent, plusMinus: half, standardUncertainty: half / 2, estimate: true }
  const { verdict: word, limitInBand, overRating } = idleVerdict(banded, window)
  const windowPercent = { low: figure(100 * window.low), high: figure(100 * window.high) }
  return { verdict: word, windowPercent, limitInBand, overRating }
}

/** With the screen strapped to the plate both count as the plate's. */
function currentsOf({ doubt, bands }: Fitted, strapped: boolean) {
  if (strapped) {
    const powers = { plateWatts: bands.tubeDissipation, screenWatts: null }
    return { plate: bands.cathodeCurrent, screen: null, powers }
  }
  const hasScreen = doubt.tube.parameters.kind === 'pentode'
  const powers = { plateWatts: bands.plateDissipation, screenWatts: hasScreen ? bands.screenDissipation : null }
  return { plate: bands.plateCurrent, screen: hasScreen ? bands.screenCurrent : null, powers }
}

function socketReport(fitted: Fitted, { service, screenFeed }: InCircuit, words: Words) {
  const { proposed, doubt, idle, bands } = fitted
  const { plate, screen, powers } = currentsOf(fitted, screenFeed.kind === 'triode-strapped')
  return {
    socket: idle.socket,
    tube: tubeReport(proposed),
    plateToCathodeVolts: bandFigures(bands.plateToCathode),
    screenToCathodeVolts: screen && bandFigures(bands.screenToCathode),
    gridToCathodeVolts: bandFigures(bands.gridToCathode),
    ...predictedFigures(plate, screen, powers, proposed.variant),
    verdict: verdict(platePercent(powers, proposed.variant), fitted, service),
    transconductanceMilliampsPerVolt: figure(1000 * idle.transconductance, 3),
    plateResistanceOhms: idle.plateConductance > 0 ? figure(1 / idle.plateConductance, 3) : null,
    cautions: curveCautions(proposed, doubt.predicted, words),
  }
}

const sideReport = (side: IdleSolution['sides']['a']) =>
  side && { plateVolts: figure(side.plate), plateMilliamps: figure(1000 * side.current) }

function circuitReport(solution: IdleSolution) {
  const { reservoir, screenNode, supplyCurrent, rectifierDrop, sides, biasResistors } = solution
  return {
    reservoirVolts: figure(reservoir),
    screenNodeVolts: screenNode === null ? null : figure(screenNode),
    supplyMilliamps: figure(1000 * supplyCurrent),
    rectifierDropVolts: figure(rectifierDrop),
    sides: { A: sideReport(sides.a), B: sideReport(sides.b) },
    biasResistors: biasResistors.map(({ id, voltage, current, dissipation }) => ({
      id,
      volts: figure(voltage),
      milliamps: figure(1000 * current),
      watts: figure(dissipation),
    })),
  }
}

function fittedSockets(
  given: InCircuit,
  proposed: readonly ProposedTube[],
  solution: IdleSolution,
  doubts: readonly Doubt[],
  bands: readonly TubeBands[],
): Fitted[] {
  return given.sockets.map((socket, index) => {
    const [one, idle, doubt, band] = [proposed[index], solution.tubes[index], doubts[index], bands[index]]
    if (!one || !idle || !doubt || !band) throw new Error(`Socket ${index} was not solved`)
    return { given: socket, proposed: one, doubt, idle, bands: band }
  })
}

export function predictInCircuit(given: InCircuit): Result<object, Faults> {
  const proposed = together(given.sockets.map(({ tube }, index) => proposedTube(tube, `sockets[${index}].tube`)))
  if (!proposed.ok) return proposed
  const stage = proposedStage(given, proposed.value)
  if (!stage.ok) return stage
  const solved = solveIdle(stage.value)
  if (!solved.ok) return fail([solveFault(solved.fault, given)])
  const solution = solved.value
  const doubts = proposed.value.map(({ tube }, index): Doubt => {
    const idle = solution.tubes[index]
    if (!idle) throw new Error(`Tube ${index} was not solved`)
    return { tube, predicted: predictedIdle(tube, idle) }
  })
  const bands = circuitBands(stage.value, solution, doubts)
  if (!bands.ok) return fail([solveFault(bands.fault, given)])
  const words = wordsFor(given.words)
  const fitted = fittedSockets(given, proposed.value, solution, doubts, bands.value)
  return ok({
    sockets: fitted.map((one) => socketReport(one, given, words)),
    circuit: circuitReport(solution),
    cautions: [...solution.cautions.map((one) => solutionCaution(one, words)), READ_IT],
  })
}
