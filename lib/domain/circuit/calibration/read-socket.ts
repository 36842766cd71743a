/**
 * One output socket with its readings worked out: which current was read there, and how well.
 *
 * A cathode method reads Ia + Ig2; the drop over a half primary reads Ia, with strapped
 * screens Ia + Ig2, with screens on a tap at the share t of the winding Ia + t·Ig2.
 */

import type { AmpSheet } from '@/lib/domain/amp/amp'
import type { Socket } from '@/lib/domain/amp/socket'
import { benchResult, idleContext, idleWindows, outputGroup, placeOf } from '@/lib/domain/bench/bench-result'
import { readingOfSocket } from '@/lib/domain/bench/reading-of-socket'
import type { SocketEntry } from '@/lib/domain/bench/reading-set'
import { DEAD_SOCKET_CURRENT } from '@/lib/domain/bias/cautions'
import { computeIdle, type IdleResult } from '@/lib/domain/bias/idle'
import { isIncomplete } from '@/lib/domain/bias/idle-fault'
import type { BiasKind, SocketReading } from '@/lib/domain/bias/idle-reading'
import type { CircuitFault } from '@/lib/domain/circuit/amp/circuit-fault'
import type { CircuitGiven } from '@/lib/domain/circuit/amp/circuit-given'
import { catalogueModel } from '@/lib/domain/model/catalogue-model'
import { type IndividualTube, individualTube, type TestRecord, untestedTube } from '@/lib/domain/model/individual-tube'
import { fail, ok, type Result } from '@/lib/domain/result'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import type { TubeVariant } from '@/lib/domain/tube/tube-variant'

export type ReadCurrent = {
  /** Which sum of plate and screen current was read. */
  readonly sum: 'plate' | 'cathode' | 'plate-and-tap'
  readonly amperes: number
  /** Standard uncertainty of the plate current, as a share. */
  readonly share: number
  /** Null unless its own drop was read. */
  readonly screen: { readonly amperes: number; readonly standard: number } | null
  readonly estimate: boolean
  readonly idle: IdleResult
}

export type ReadSocket = {
  readonly socket: Socket
  /** With what was read at other sockets of the same part. Null: nothing was read. */
  readonly entry: SocketEntry | null
  readonly bias: BiasKind
  readonly variant: TubeVariant
  /** From its test records, or the average of its type. */
  readonly tube: IndividualTube
  readonly records: readonly TestRecord[]
  readonly current: ReadCurrent | null
}

const strapped = ({ facts }: CircuitGiven): boolean => facts.screenFeed === 'triode-strapped'

function sumRead({ facts }: CircuitGiven, { method }: SocketReading): ReadCurrent['sum'] {
  if (method.kind !== 'half-primary-drop' || facts.screenFeed === 'triode-strapped') return 'cathode'
  return facts.screenFeed === 'ultralinear-tap' ? 'plate-and-tap' : 'plate'
}

function readCurrent(given: CircuitGiven, reading: SocketReading, idle: IdleResult): ReadCurrent {
  const sum = sumRead(given, reading)
  const { plateAmps, cathodeAmps, screenAmps } = idle
  const { value, estimate } = sum === 'cathode' ? cathodeAmps : plateAmps
  const screenRead = reading.screen.kind === 'screen-resistor-drop'
  return {
    sum,
    amperes: value,
    share: plateAmps.value > 0 ? plateAmps.standardUncertainty / plateAmps.value : 0,
    screen: screenRead ? { amperes: screenAmps.value, standard: screenAmps.standardUncertainty } : null,
    estimate: estimate || plateAmps.estimate,
    idle,
  }
}

type Worked = Result<ReadCurrent | null, CircuitFault>

function workedOut(given: CircuitGiven, sheet: AmpSheet, socket: Socket, entry: SocketEntry): Worked {
  const { set, shop } = given
  const place = { ...placeOf(sheet, socket, shop), strapped: strapped(given) }
  const found = readingOfSocket(socket, entry, set, place)
  if (!found.ok) return ok(null)
  const reading: SocketReading = found.value
  const idle = computeIdle(reading, idleContext(sheet, socket, set, idleWindows(shop)))
  if (!idle.ok) {
    return isIncomplete(idle.fault)
      ? ok(null)
      : fail({ code: 'readings-refused', socket: socket.position, fault: idle.fault })
  }
  const current = readCurrent(given, reading, idle.value)
  if (current.amperes >= DEAD_SOCKET_CURRENT) return ok(current)
  return fail({ code: 'socket-dead', socket: socket.position, milliamps: 1000 * current.amperes })
}

function fittedTube(
  given: CircuitGiven,
  { id, position, typeFitted }: Socket,
): Result<Pick<ReadSocket, 'variant' | 'tube' | 'records'>, CircuitFault> {
  const { shop } = given
  if (typeFitted.trim() === '') return fail({ code: 'type-not-noted', socket: position })
  const variant = findTubeType(typeFitted, shop)
  if (!variant) return fail({ code: 'type-not-known', socket: position, designation: typeFitted })
  const model = catalogueModel(variant.typeId, shop)
  if (!model.ok || variant.role !== 'output')
    return fail({ code: 'no-curves', socket: position, designation: typeFitted })
  const records = given.records[id] ?? []
  const own = individualTube(model.value, records)
  // A record that does not fit its type is no better than none: the reading in the socket speaks for the tube.
  if (!own.ok) return ok({ variant, tube: untestedTube(model.value), records: [] })
  return ok({ variant, tube: own.value, records })
}

function readSocket(given: CircuitGiven, socket: Socket, entry: SocketEntry | null): Result<ReadSocket, CircuitFault> {
  const { position, biasKind } = socket
  if (biasKind === '') return fail({ code: 'bias-kind-not-noted', socket: position })
  const fitted = fittedTube(given, socket)
  if (!fitted.ok) return fitted
  const current: Worked = entry ? workedOut(given, given.sheet, socket, entry) : ok(null)
  return current.ok ? ok({ socket, entry, bias: biasKind, ...fitted.value, current: current.value }) : current
}

/** In chassis order. */
export function readSockets(given: CircuitGiven): Result<readonly ReadSocket[], CircuitFault> {
  const { sheet, group, set, shop } = given
  const sockets = outputGroup(sheet, group)
  if (sockets.length === 0) return fail({ code: 'no-output-socket', group })
  const entries = new Map(benchResult(sheet, set, shop).sockets.map(({ socket, entry }) => [socket.id, entry]))
  const read: ReadSocket[] = []
  for (const socket of sockets) {
    const one = readSocket(given, socket, entries.get(socket.id) ?? null)
    if (!one.ok) return one
    read.push(one.value)
  }
  return read.some(({ current }) => current !== null) ? ok(read) : fail({ code: 'no-current-read', group })
}
