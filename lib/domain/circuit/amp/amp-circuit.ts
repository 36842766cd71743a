/**
 * The circuit of one output group from the amplifier's sheet, what is noted of its supplies,
 * and a round of readings: calibrated, so that solving it gives the currents read.
 *
 * What the readings fix is taken from them: reservoir = plate volts + drop over the half
 * primary, screen node = screen volts + drop over the screen resistor, grids as read. The
 * tubes are then made to draw what was read (calibrated-tubes.ts). What nothing fixes is
 * assumed, and every assumption is named beside the result.
 *
 * Voltages are divided by mains at the wall over mains marked, so the stage holds at the
 * marked voltage and its own mains factor puts it back where it was read: every supply, the
 * bias supply too, is taken to follow the mains in proportion.
 */

import type { SupplyFacts } from '@/lib/domain/amp/supply-facts'
import { idleWindows, outputGroup } from '@/lib/domain/bench/bench-result'
import type { BiasKind, IdleWindows, Service } from '@/lib/domain/bias/idle-reading'
import { biasResistorsOf } from '@/lib/domain/circuit/calibration/bias-resistors-of'
import {
  exactly,
  gripOfGrid,
  type ImpliedGrid,
  impliedGrid,
  pointOf,
  tubeAsRead,
} from '@/lib/domain/circuit/calibration/calibrated-tubes'
import { type Settled, settleCurrents } from '@/lib/domain/circuit/calibration/currents-read'
import { gridsFromReadings, SHARED_SUPPLY } from '@/lib/domain/circuit/calibration/grids-from-readings'
import { primaryOf } from '@/lib/domain/circuit/calibration/primary-of'
import { type ReadSocket, readSockets } from '@/lib/domain/circuit/calibration/read-socket'
import type { Frame } from '@/lib/domain/circuit/calibration/stage-at-currents'
import type { IdleSolution } from '@/lib/domain/circuit/idle-solution'
import type { OutputStage } from '@/lib/domain/circuit/output-stage'
import { solveIdle } from '@/lib/domain/circuit/solve-idle'
import type { IndividualTube } from '@/lib/domain/model/individual-tube'
import { fail, ok, type Result } from '@/lib/domain/result'
import type { OwnTubeType } from '@/lib/domain/tube/tube-catalogue'
import type { TubeVariant } from '@/lib/domain/tube/tube-variant'
import { volts } from '@/lib/domain/units'
import type { Assumption } from './assumption'
import type { CircuitFault } from './circuit-fault'
import type { CircuitGiven } from './circuit-given'
import { type Rectifier, rectifierOf } from './rectifier-of'

export type CircuitSocket = {
  readonly socketId: string
  readonly position: string
  readonly bias: BiasKind
  readonly variant: TubeVariant
  /** As read in its socket: its parameters are those of the stage. */
  readonly tube: IndividualTube
  /** Current that was read; false: taken as the others'. */
  readonly wasRead: boolean
  /** Share per volt by which grid volts move its current at the point read. */
  readonly gripPerVolt: number
}

export type AmpCircuit = {
  readonly group: string
  /** Holds at marked mains; its mains factor is that of the readings. */
  readonly stage: OutputStage
  /** Of the stage as read. */
  readonly solution: IdleSolution
  /** In the order of the stage's tubes. */
  readonly sockets: readonly CircuitSocket[]
  readonly service: Service
  readonly windows: IdleWindows
  readonly markedMainsVolts: number
  readonly readAtWallVolts: number
  readonly facts: SupplyFacts
  readonly rectifier: Rectifier
  /** The shop's, so that the circuit itself serves as catalogue. */
  readonly ownTypes: readonly OwnTubeType[]
  /** Standard uncertainty of the grid supplies' volts at marked mains; null where there are none. */
  readonly gridStandard: number | null
  readonly assumptions: readonly Assumption[]
}

type Framed = { readonly frame: Frame; readonly assumptions: readonly Assumption[] }

function frameOf(given: CircuitGiven, sockets: readonly ReadSocket[]): Result<Framed, CircuitFault> {
  const { sheet, facts, set, shop } = given
  const mainsFactor = set.wallVolts / sheet.amp.mainsVolts
  if (!(mainsFactor > 0) || !Number.isFinite(mainsFactor)) return fail({ code: 'mains-not-known' })
  const bias = biasResistorsOf(sockets)
  if (!bias.ok) return bias
  const { rectifier, assumptions } = rectifierOf(sheet, facts, shop)
  const primary = primaryOf(sheet, outputGroup(sheet, given.group))
  const grids = gridsFromReadings(given, sockets, mainsFactor)
  return ok({
    frame: { given, sockets, mainsFactor, primary, rectifier, grids, bias: bias.value },
    assumptions: [...assumptions, ...primary.assumptions, ...bias.value.assumptions, ...grids.assumptions],
  })
}

const readsOf = (frame: Frame, { currents, voltages }: Settled) =>
  frame.sockets.map((socket, i) => {
    const [current, voltage] = [currents[i], voltages[i]]
    if (!current || !voltage) throw new Error(`Socket ${i} was not settled`)
    return { socket, currents: current, voltages: voltage }
  })

/** The frame with the grids put where the currents say. */
function withGrid(frame: Frame, { volts: grid, standard }: ImpliedGrid): Frame {
  const supplies = frame.grids.supplies.map((one) =>
    one.id === SHARED_SUPPLY ? { ...one, voltage: volts(grid / frame.mainsFactor) } : one,
  )
  return { ...frame, grids: { ...frame.grids, supplies, standard } }
}

type Placed = { readonly frame: Frame; readonly assumptions: readonly Assumption[] }

function placeGrids(frame: Frame): Result<Placed, CircuitFault> {
  if (!frame.grids.implied) return ok({ frame, assumptions: [] })
  const settled = settleCurrents(frame, parametersOf(frame.sockets.map(({ tube }) => tube)))
  const found = impliedGrid(readsOf(frame, settled))
  if (!found.ok) return found
  const sockets = frame.sockets.filter(({ bias }) => bias === 'grid-supplied').map(({ socket }) => socket.position)
  const { volts: value, standard } = found.value
  const said: Assumption = { code: 'grid-volts-implied', volts: value, plusMinusVolts: 2 * standard, sockets }
  return ok({ frame: withGrid(frame, found.value), assumptions: [said] })
}

const parametersOf = (tubes: readonly IndividualTube[]) => tubes.map(({ parameters }) => parameters)

function tubesAsRead(frame: Frame): Result<readonly IndividualTube[], CircuitFault> {
  const settled = settleCurrents(frame, parametersOf(frame.sockets.map(({ tube }) => tube)))
  const tubes: IndividualTube[] = []
  for (const read of readsOf(frame, settled)) {
    const own = tubeAsRead(read)
    if (!own.ok) return own
    tubes.push(own.value)
  }
  return ok(tubes)
}

type Calibrated = { readonly settled: Settled; readonly tubes: readonly IndividualTube[] }

function calibrated(frame: Frame, known: readonly IndividualTube[]): Calibrated {
  const settled = settleCurrents(frame, parametersOf(known))
  const tubes = readsOf(frame, settled).map(({ currents, voltages }, i) =>
    exactly(known[i] as IndividualTube, currents, voltages),
  )
  return { settled, tubes }
}

function circuitSockets(frame: Frame, { settled, tubes }: Calibrated): CircuitSocket[] {
  return readsOf(frame, settled).map(({ socket, voltages }, i) => {
    const tube = tubes[i] as IndividualTube
    return {
      socketId: socket.socket.id,
      position: socket.socket.position,
      bias: socket.bias,
      variant: socket.variant,
      tube,
      wasRead: socket.current !== null,
      gripPerVolt: gripOfGrid(tube.parameters, pointOf(voltages)),
    }
  })
}

function saidOfSockets(given: CircuitGiven, sockets: readonly ReadSocket[]): Assumption[] {
  const named = (those: readonly ReadSocket[]) => those.map(({ socket }) => socket.position)
  const unread = sockets.filter(({ current }) => current === null)
  const estimated = sockets.filter(({ current }) => current?.estimate === true)
  const screens = sockets.filter(({ tube }) => tube.parameters.kind === 'pentode')
  const unnoted = screens.filter(({ socket }) => socket.screenOhms === null)
  const strapped = given.facts.screenFeed === 'triode-strapped'
  return [
    ...(unread.length > 0 ? [{ code: 'socket-not-read', sockets: named(unread) } satisfies Assumption] : []),
    ...(estimated.length > 0 ? [{ code: 'current-is-estimate', sockets: named(estimated) } satisfies Assumption] : []),
    ...(unnoted.length > 0 && !strapped
      ? [{ code: 'screen-resistor-not-known', sockets: named(unnoted) } satisfies Assumption]
      : []),
  ]
}

export function ampCircuit(given: CircuitGiven): Result<AmpCircuit, CircuitFault> {
  const sockets = readSockets(given)
  if (!sockets.ok) return sockets
  const framed = frameOf(given, sockets.value)
  if (!framed.ok) return framed
  const placed = placeGrids(framed.value.frame)
  if (!placed.ok) return placed
  const { frame } = placed.value
  const known = tubesAsRead(frame)
  if (!known.ok) return known
  const done = calibrated(frame, known.value)
  const { stage: bare, assumptions } = done.settled
  const stage: OutputStage = {
    ...bare,
    tubes: bare.tubes.map((one, i) => ({ ...one, tube: (done.tubes[i] as IndividualTube).parameters })),
  }
  const solution = solveIdle(stage)
  if (!solution.ok) return fail({ code: 'no-solution', fault: solution.fault })
  const { sheet, set, facts, shop, group } = given
  return ok({
    group,
    stage,
    solution: solution.value,
    sockets: circuitSockets(frame, done),
    service: sheet.amp.outputClass === 'single-ended' ? 'single-ended-class-a' : 'push-pull-class-ab',
    windows: idleWindows(shop),
    markedMainsVolts: sheet.amp.mainsVolts,
    readAtWallVolts: set.wallVolts,
    facts,
    rectifier: frame.rectifier,
    ownTypes: shop.ownTypes,
    gridStandard: frame.grids.standard === null ? null : frame.grids.standard / frame.mainsFactor,
    assumptions: [
      ...saidOfSockets(given, frame.sockets),
      ...framed.value.assumptions,
      ...placed.value.assumptions,
      ...assumptions,
    ],
  })
}
