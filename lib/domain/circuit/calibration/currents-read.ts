/**
 * Plate and screen current of every tube as read, with the share of the screen taken from
 * its own drop, else from the tube's curves at the volts that these currents leave it.
 *
 *   Ig2/Ia = r·Vg2/Va does not hang on the tube's strength, so a few rounds settle it.
 */

import type { Assumption } from '@/lib/domain/circuit/amp/assumption'
import type { CircuitGiven } from '@/lib/domain/circuit/amp/circuit-given'
import type { OutputStage } from '@/lib/domain/circuit/output-stage'
import { type TubeCurrents, type TubeVoltages, voltagesAt } from '@/lib/domain/circuit/solver/voltages-at'
import { type AmplifyingParameters, tubeCurrents } from '@/lib/domain/model/plate-curves'
import type { ReadSocket } from './read-socket'
import { type Frame, stageAtCurrents } from './stage-at-currents'

export type Settled = {
  readonly stage: OutputStage
  readonly assumptions: readonly Assumption[]
  readonly currents: readonly TubeCurrents[]
  readonly voltages: readonly TubeVoltages[]
}

const ROUNDS = 60
const SETTLED = 1e-13
/** Any conducting point tells the ratio; far from cutoff it is told best. */
const CONDUCTING_GRID = 0

function ratioAt(tube: AmplifyingParameters, { plate, screen, cathode }: TubeVoltages): number {
  if (tube.kind === 'triode') return 0
  const at = tubeCurrents(tube, plate - cathode, screen - cathode, CONDUCTING_GRID)
  return at.plate > 0 ? at.screen / at.plate : 0
}

function tapShare({ facts }: CircuitGiven): number {
  return facts.ultralinearTapPercent === null ? 0.5 : facts.ultralinearTapPercent / 100
}

function split(given: CircuitGiven, { current }: ReadSocket, ratio: number): TubeCurrents | null {
  if (current === null) return null
  const { sum, amperes, screen } = current
  const tap = tapShare(given)
  if (screen !== null) {
    const own = screen.amperes
    if (sum === 'plate') return { plate: amperes, screen: own }
    return { plate: amperes - own * (sum === 'cathode' ? 1 : tap), screen: own }
  }
  const plate = amperes / (1 + ratio * (sum === 'cathode' ? 1 : sum === 'plate' ? 0 : tap))
  return { plate, screen: plate * ratio }
}

/** A socket that was not read draws as the mean of those that were. */
function filled(read: readonly (TubeCurrents | null)[]): TubeCurrents[] {
  const known = read.filter((one) => one !== null)
  const plate = known.reduce((sum, one) => sum + one.plate, 0) / known.length
  const screen = known.reduce((sum, one) => sum + one.screen, 0) / known.length
  return read.map((one) => one ?? { plate, screen })
}

const farthest = (one: readonly TubeCurrents[], other: readonly TubeCurrents[]): number =>
  Math.max(...one.map(({ screen, plate }, i) => Math.abs(screen - (other[i]?.screen ?? 0)) / plate))

export function settleCurrents(frame: Frame, tubes: readonly AmplifyingParameters[]): Settled {
  const { given, sockets } = frame
  let ratios = tubes.map((tube) => (tube.kind === 'pentode' ? tube.r : 0))
  let currents = filled(sockets.map((one, i) => split(given, one, ratios[i] ?? 0)))
  for (let round = 0; ; round++) {
    const { stage, assumptions } = stageAtCurrents(frame, tubes, currents)
    const voltages = voltagesAt(stage, currents)
    if (round >= ROUNDS) return { stage, assumptions, currents, voltages }
    ratios = tubes.map((tube, i) => ratioAt(tube, voltages[i] as TubeVoltages))
    const next = filled(sockets.map((one, i) => split(given, one, ratios[i] ?? 0)))
    if (farthest(next, currents) <= SETTLED) return { stage, assumptions, currents, voltages }
    currents = next
  }
}
