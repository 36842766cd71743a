/**
 * The tubes in their sockets as the readings know them.
 *
 * What was read in the socket is one more test record of that tube, at the volts it stands
 * at; with its records from the tester it gives the tube's own scales and what is still
 * doubtful of them (individual-tube.ts). Perveance and screen share are then moved the last
 * little way, so that the circuit gives the very currents read.
 *
 * Where nobody read the grids, volts are sought at which each tube, taken by its records or
 * as the average of its type, draws what was read; their mean is taken for all, since one
 * supply feeds them, and what is left over is each tube's own. Their standard uncertainty:
 *   u(Vg) = Ik/gm·√(curves² + tube²/n),  shares of Ik, n tubes.
 */

import type { CircuitFault } from '@/lib/domain/circuit/amp/circuit-fault'
import type { TubeCurrents, TubeVoltages } from '@/lib/domain/circuit/solver/voltages-at'
import {
  type IndividualTube,
  individualTube,
  type TestPoint,
  type TestRecord,
} from '@/lib/domain/model/individual-tube'
import { type AmplifyingParameters, tubeCurrents } from '@/lib/domain/model/plate-curves'
import { predictedIdle } from '@/lib/domain/model/predicted-idle'
import { fail, ok, type Result } from '@/lib/domain/result'
import { amps, volts } from '@/lib/domain/units'
import type { ReadSocket } from './read-socket'

export const pointOf = ({ plate, screen, cathode, grid }: TubeVoltages): TestPoint => ({
  plateToCathode: volts(plate - cathode),
  screenToCathode: volts(screen - cathode),
  gridToCathode: volts(grid - cathode),
})

/** A reading is never believed to better than this. Of itself. */
const LEAST_SHARE = 1e-3
const HALVINGS = 80

const modelAt = (tube: AmplifyingParameters, at: TestPoint) =>
  tubeCurrents(tube, at.plateToCathode, at.screenToCathode, at.gridToCathode)

function totalAt(tube: AmplifyingParameters, at: TestPoint, gridToCathode: number): number {
  const { plate, screen } = tubeCurrents(tube, at.plateToCathode, at.screenToCathode, gridToCathode)
  return plate + screen
}

/** How far the total current moves with grid volts, as a share per volt. */
export function gripOfGrid(tube: AmplifyingParameters, at: TestPoint): number {
  const { plate, screen, plateByGrid, screenByGrid } = modelAt(tube, at)
  return plate + screen > 0 ? (plateByGrid + screenByGrid) / (plate + screen) : 0
}

/** Grid to cathode at which the tube draws that much. Null: not even at 0 V. */
function gridFor(tube: AmplifyingParameters, at: TestPoint, total: number): number | null {
  if (totalAt(tube, at, 0) < total) return null
  let [low, high] = [-Math.max(at.plateToCathode, at.screenToCathode, 1), 0]
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2
    if (totalAt(tube, at, middle) > total) high = middle
    else low = middle
  }
  return high
}

export type ImpliedGrid = { readonly volts: number; readonly standard: number }

type Read = {
  readonly socket: ReadSocket
  readonly currents: TubeCurrents
  readonly voltages: TubeVoltages
}

type Implied = { readonly grid: number; readonly curves: number; readonly tube: number }

/** In volts: of the curves, shared by all tubes of the type, and of the tube itself. */
function impliedAt({ socket, currents, voltages }: Read): Result<Implied, CircuitFault> {
  const { tube } = socket
  const total = currents.plate + currents.screen
  const found = gridFor(tube.parameters, pointOf(voltages), total)
  if (found === null) {
    return fail({ code: 'grid-volts-not-found', socket: socket.socket.position, milliamps: 1000 * total })
  }
  const at = { ...pointOf(voltages), gridToCathode: volts(found) }
  const { curveShare, tubeShare } = predictedIdle(tube, at)
  const perVolt = gripOfGrid(tube.parameters, at)
  return ok({ grid: found + voltages.cathode, curves: curveShare / perVolt, tube: tubeShare / perVolt })
}

export function impliedGrid(read: readonly Read[]): Result<ImpliedGrid, CircuitFault> {
  const each: Implied[] = []
  for (const one of read.filter(({ socket }) => socket.bias === 'grid-supplied' && socket.current !== null)) {
    const found = impliedAt(one)
    if (!found.ok) return found
    each.push(found.value)
  }
  const mean = (of: (one: Implied) => number) => each.reduce((sum, one) => sum + of(one), 0) / each.length
  const tubes = Math.sqrt(mean(({ tube }) => tube * tube) / each.length)
  return ok({
    volts: mean(({ grid }) => grid),
    standard: Math.hypot(
      mean(({ curves }) => curves),
      tubes,
    ),
  })
}

function recordOf({ socket, currents, voltages }: Read): TestRecord | null {
  const { current } = socket
  if (current === null) return null
  const share = Math.max(LEAST_SHARE, current.share)
  return {
    point: pointOf(voltages),
    plateCurrent: { value: amps(currents.plate), standard: amps(share * currents.plate) },
    transconductance: null,
    screenCurrent: current.screen && {
      value: amps(current.screen.amperes),
      standard: amps(Math.max(current.screen.standard, LEAST_SHARE * current.screen.amperes)),
    },
  }
}

/** With the socket's own reading among its records. */
export function tubeAsRead(read: Read): Result<IndividualTube, CircuitFault> {
  const { socket, currents, voltages } = read
  const { tube, records, variant } = socket
  const record = recordOf(read)
  if (record === null) return ok(tube)
  const own = individualTube(tube.type, [...records, record])
  if (own.ok) return own
  const at = modelAt(tube.parameters, pointOf(voltages))
  return fail({
    code: 'socket-unlike-type',
    socket: socket.socket.position,
    designation: variant.asked,
    readMilliamps: 1000 * (currents.plate + currents.screen),
    typeMilliamps: 1000 * (at.plate + at.screen),
  })
}

/** The last little way: exactly these currents at these volts. */
export function exactly(tube: IndividualTube, currents: TubeCurrents, voltages: TubeVoltages): IndividualTube {
  const { parameters } = tube
  const at = modelAt(parameters, pointOf(voltages))
  const total = currents.plate + currents.screen
  const strength = total / (at.plate + at.screen)
  if (parameters.kind === 'triode') return { ...tube, parameters: { ...parameters, kg: parameters.kg / strength } }
  const share = at.screen > 0 && currents.screen > 0 ? (currents.screen * at.plate) / (currents.plate * at.screen) : 1
  return { ...tube, parameters: { ...parameters, p: parameters.p * strength, r: parameters.r * share } }
}
