/**
 * From the sheet and the meter to what the idle computation takes: which
 * resistor, shared by whom, and what is missing.
 *
 * A resistor's id is the same for all sockets that share it, so its error is
 * counted once: one cathode resistor for the whole group, or one on each side
 * when it serves fewer tubes than the group has.
 */
import type { Socket } from '@/lib/domain/amp/socket'
import type { CurrentMethod, Resistor, ScreenCurrentSource, SocketReading } from '@/lib/domain/bias/idle-reading'
import { fail, ok, type Result } from '@/lib/domain/result'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import { ohms, ratio, volts } from '@/lib/domain/units'
import type { ReadingMethod, ReadingSet, SocketEntry } from './reading-set'

export type ReadingGap =
  | { readonly code: 'type-not-noted'; readonly socket: string }
  | { readonly code: 'type-not-in-handbook'; readonly socket: string; readonly designation: string }
  | { readonly code: 'plate-volts-missing'; readonly socket: string }
  | { readonly code: 'no-current-read'; readonly socket: string }
  | { readonly code: 'bias-kind-not-noted'; readonly socket: string }
  | { readonly code: 'resistance-not-on-sheet'; readonly socket: string; readonly part: string }

type Conditions = Pick<ReadingSet, 'resistorTolerancePercent' | 'copperWarmingCelsius'>

const maybe = (value: number | null) => (value === null ? null : volts(value))

function resistor(id: string, resistance: number, { resistorTolerancePercent }: Conditions): Resistor {
  return { id, resistance: ohms(resistance), tolerance: ratio(resistorTolerancePercent / 100) }
}

const groupOf = (socket: Socket) => socket.matchGroup || socket.position

/** One id for all sockets on the same resistor. */
export function cathodeResistorId(socket: Socket, groupSize: number): string {
  if (socket.cathodeSharedBy <= 1) return `${socket.position} cathode resistor`
  const whole = socket.cathodeSharedBy >= groupSize || socket.side === ''
  return `${groupOf(socket)} cathode resistor${whole ? '' : `, side ${socket.side}`}`
}

export const halfPrimaryId = (socket: Socket) =>
  socket.side === '' ? `${socket.position} primary` : `${groupOf(socket)} half primary, side ${socket.side}`

/** The drop box that was filled in, the most telling first, unless the technician chose one. */
export function methodOf(entry: Omit<SocketEntry, 'method'>, socket: Socket): ReadingMethod {
  if (entry.senseDropVolts !== null) return 'cathode-sense'
  if (entry.halfDropVolts !== null) return 'half-primary-drop'
  return entry.cathodeVolts !== null && socket.biasKind === 'cathode-resistor' ? 'cathode-bias' : ''
}

function currentMethod(
  socket: Socket,
  entry: SocketEntry,
  set: Conditions,
  groupSize: number,
): Result<CurrentMethod, ReadingGap> {
  const missing = (part: string) => fail({ code: 'resistance-not-on-sheet', socket: socket.position, part } as const)
  const unread = fail({ code: 'no-current-read', socket: socket.position } as const)
  switch (entry.method) {
    case 'cathode-sense': {
      if (entry.senseDropVolts === null) return unread
      if (socket.senseOhms === null) return missing('sense resistor')
      return ok({
        kind: 'cathode-sense',
        drop: volts(entry.senseDropVolts),
        resistor: resistor(`${socket.position} sense resistor`, socket.senseOhms, set),
      })
    }
    case 'half-primary-drop': {
      if (entry.halfDropVolts === null) return unread
      if (socket.halfPrimaryOhms === null) return missing('half primary')
      return ok({
        kind: 'half-primary-drop',
        drop: volts(entry.halfDropVolts),
        resistor: resistor(halfPrimaryId(socket), socket.halfPrimaryOhms, set),
        sharedBy: socket.halfSharedBy,
        possibleWarmingCelsius: set.copperWarmingCelsius,
      })
    }
    case 'cathode-bias': {
      if (entry.cathodeVolts === null) return unread
      if (socket.cathodeOhms === null) return missing('cathode resistor')
      return ok({
        kind: 'cathode-bias',
        drop: volts(entry.cathodeVolts),
        resistor: resistor(cathodeResistorId(socket, groupSize), socket.cathodeOhms, set),
        sharedBy: socket.cathodeSharedBy,
      })
    }
    case '':
      return unread
  }
}

/** A grid-supplied stage has its cathodes at chassis, unless the sheet shows a resistor there. */
function isAtChassis({ biasKind, cathodeOhms }: Socket, method: CurrentMethod): boolean {
  return method.kind === 'half-primary-drop' && biasKind === 'grid-supplied' && cathodeOhms === null
}

function screenSource(socket: Socket, entry: SocketEntry, set: Conditions): ScreenCurrentSource {
  if (entry.screenDropVolts === null || socket.screenOhms === null) return { kind: 'typical-share' }
  return {
    kind: 'screen-resistor-drop',
    drop: volts(entry.screenDropVolts),
    resistor: resistor(`${socket.position} screen resistor`, socket.screenOhms, set),
  }
}

export type SocketPlace = {
  /** The number of output sockets in this socket's match group. */
  readonly groupSize: number
  readonly catalogue: TubeCatalogue
  /** Screens joined to plates: no screen current is told apart. */
  readonly strapped: boolean
}

export function readingOfSocket(
  socket: Socket,
  entry: SocketEntry,
  set: Conditions,
  { groupSize, catalogue, strapped }: SocketPlace,
): Result<SocketReading, ReadingGap> {
  const { position, typeFitted } = socket
  if (typeFitted.trim() === '') return fail({ code: 'type-not-noted', socket: position })
  const variant = findTubeType(typeFitted, catalogue)
  if (!variant) return fail({ code: 'type-not-in-handbook', socket: position, designation: typeFitted })
  if (socket.biasKind === '') return fail({ code: 'bias-kind-not-noted', socket: position })
  const method = currentMethod(socket, entry, set, groupSize)
  if (!method.ok) return method
  if (entry.plateVolts === null) return fail({ code: 'plate-volts-missing', socket: position })
  const assumed = entry.cathodeVolts === null && isAtChassis(socket, method.value)
  return ok({
    socket: position,
    variant,
    plateVoltage: volts(entry.plateVolts),
    cathodeVoltage: assumed ? volts(0) : maybe(entry.cathodeVolts),
    cathodeAtChassisAssumed: assumed,
    screenVoltage: maybe(entry.screenVolts),
    gridVoltage: maybe(entry.gridVolts),
    method: method.value,
    screen: strapped ? { kind: 'triode-strapped' } : screenSource(socket, entry, set),
  })
}
