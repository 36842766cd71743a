/**
 * What the meter shows at the sockets of an amplifier whose currents are given,
 * so that every reading of the demo agrees with its sheet and with the others:
 *
 *   Ig2 = s·Ik,  Ia = Ik − Ig2,  sense drop = Ik·Rs,
 *   Vk = ΣIk·Rk over the tubes that share the resistor,
 *   half-primary drop = ΣIa of that side · R·(1 + 0.00393·ΔT),
 *   Va = plate supply − ΣIa of that side · R,  Vg2 = screen supply − Ig2·Rg2.
 *
 * ΣIa over the tubes in parallel on that half. Copper warm by 6 °C.
 */
import type { AmpSheet } from '@/lib/domain/amp/amp'
import type { Socket } from '@/lib/domain/amp/socket'
import { methodOf } from '@/lib/domain/bench/reading-of-socket'
import type { SocketEntry } from '@/lib/domain/bench/reading-set'
import { shownByMeter } from './shown-by-meter'

export type OutputState = {
  readonly cathodeMilliamps: number
  /** Of cathode current. */
  readonly screenShare: number
  readonly gridVolts: number
  /** Screen resistor open: what the meter finds on the screen. No drop is read then. */
  readonly deadScreenVolts?: number
}

export type SmallState = { readonly plateVolts: number; readonly cathodeVolts: number }

export type BenchState = {
  readonly plateSupplyVolts: number
  readonly screenSupplyVolts: number
  /** Of a half primary where the sheet has none. */
  readonly plateLeadOhms: number
  readonly outputs: Readonly<Record<string, OutputState>>
  readonly small?: Readonly<Record<string, SmallState>>
}

const WARMED = 1 + 0.00393 * 6

const screenAmps = ({ cathodeMilliamps, screenShare }: OutputState) => (cathodeMilliamps * screenShare) / 1000
const plateAmps = (state: OutputState) => state.cathodeMilliamps / 1000 - screenAmps(state)

function stateOf(state: BenchState, { position }: Socket): OutputState {
  const found = state.outputs[position]
  if (!found) throw new Error(`The demo has no currents for ${position}`)
  return found
}

function sumOver(sockets: readonly Socket[], state: BenchState, amps: (state: OutputState) => number): number {
  return sockets.reduce((sum, socket) => sum + amps(stateOf(state, socket)), 0)
}

type Scene = {
  readonly outputs: readonly Socket[]
  readonly state: BenchState
  readonly shown: (value: number) => number
}

function outputEntry(socket: Socket, { outputs, state, shown }: Scene): SocketEntry {
  const own = stateOf(state, socket)
  const { side, matchGroup, cathodeOhms, senseOhms, screenOhms, halfPrimaryOhms } = socket
  const onHalf = outputs.filter((other) => other.side === side && other.matchGroup === matchGroup)
  const sharers = socket.cathodeSharedBy > 1 ? outputs : [socket]
  const halfOhms = (halfPrimaryOhms ?? state.plateLeadOhms) * WARMED
  const halfDrop = sumOver(onHalf, state, plateAmps) * halfOhms
  const cathode =
    cathodeOhms === null ? null : (sumOver(sharers, state, (each) => each.cathodeMilliamps) / 1000) * cathodeOhms
  const dead = own.deadScreenVolts
  const screenDrop = screenOhms === null || dead !== undefined ? null : screenAmps(own) * screenOhms
  const entry = {
    socketId: socket.id,
    plateVolts: shown(state.plateSupplyVolts - halfDrop),
    cathodeVolts: cathode !== null ? shown(cathode) : halfPrimaryOhms === null ? null : 0,
    screenVolts: shown(dead ?? state.screenSupplyVolts - (screenDrop ?? 0)),
    gridVolts: shown(own.gridVolts),
    senseDropVolts: senseOhms === null ? null : shown((own.cathodeMilliamps / 1000) * senseOhms),
    halfDropVolts: halfPrimaryOhms === null ? null : shown(halfDrop),
    screenDropVolts: screenDrop === null ? null : shown(screenDrop),
  }
  return { ...entry, method: methodOf(entry, socket) }
}

function smallEntry({ id }: Socket, { plateVolts, cathodeVolts }: SmallState, shown: Scene['shown']): SocketEntry {
  const unread = {
    screenVolts: null,
    gridVolts: null,
    senseDropVolts: null,
    halfDropVolts: null,
    screenDropVolts: null,
  }
  return { ...unread, socketId: id, method: '', plateVolts: shown(plateVolts), cathodeVolts: shown(cathodeVolts) }
}

/** In chassis order: every output socket, and the small ones that were read. */
export function socketsShow({ sockets }: AmpSheet, state: BenchState, displayCounts: number): SocketEntry[] {
  const outputs = sockets.filter(({ role }) => role === 'output')
  const shown = (value: number) => shownByMeter(value, displayCounts)
  return sockets.flatMap((socket) => {
    if (socket.role === 'output') return [outputEntry(socket, { outputs, state, shown })]
    const small = state.small?.[socket.position]
    return small ? [smallEntry(socket, small, shown)] : []
  })
}
