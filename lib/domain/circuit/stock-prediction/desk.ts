/** Room to work in for one predictor: everything a prediction writes, allocated once. */

import { MOST_TUBES } from '@/lib/domain/circuit/output-stage'
import { MOST_UNKNOWNS, newWiring } from '@/lib/domain/circuit/solver/wiring'
import { CURVE_NUMBERS } from '@/lib/domain/model/plate-curves'

/** Places of the answers, one row of MOST_UNKNOWNS numbers each. */
export const ANSWERS = {
  plateCurrent: 0,
  screenCurrent: 1,
  plateToCathode: 2,
  transconductance: 3,
  plateDissipation: 4,
} as const
export const ANSWER_COUNT = 5

const perTube = () => new Float64Array(MOST_TUBES)

export function newDesk() {
  return {
    wiring: newWiring(),
    factors: new Float64Array(MOST_UNKNOWNS * MOST_UNKNOWNS),
    exchanges: new Uint8Array(MOST_UNKNOWNS),
    /** For each answer: how it moves per ampere that a tube passes more of its own accord. */
    pulls: new Float64Array(ANSWER_COUNT * MOST_UNKNOWNS),
    /** How the voltages to the cathode answer to each current. */
    plateVolts: new Float64Array(MOST_UNKNOWNS),
    screenVolts: new Float64Array(MOST_UNKNOWNS),
    gridVolts: new Float64Array(MOST_UNKNOWNS),
    // Of each tube in the stage: ∂Ia/∂ln µ, ∂Ig2/∂ln µ, Ia·Ig2/Ik, Ig2/Ik, and the doubts of its curves.
    plateByMu: perTube(),
    screenByMu: perTube(),
    byShare: perTube(),
    screenPerCathode: perTube(),
    curveShare: perTube(),
    screenOnly: perTube(),
    /** Tubes with one number have the same curves; −1: known exactly. */
    curves: new Int8Array(MOST_TUBES),
    sharedCurves: perTube(),
    sharedScreens: perTube(),
    /** ∂ ln gm by plate, screen, grid, each to the cathode, and by ln P, ln µ, ln r. */
    gmBy: new Float64Array(6),
    scratch: new Float64Array(CURVE_NUMBERS),
  }
}

export type Desk = ReturnType<typeof newDesk>
