/**
 * A resistor or a winding that serves several tubes is read once. What was read
 * at one of its sockets holds at the others, since it is one and the same part;
 * nothing that was read at a socket itself is ever replaced.
 *
 * Only where the sheet leaves no doubt which part it is: a cathode resistor of
 * the whole group, or of a side that is known; a half primary of a known side.
 */
import type { Socket } from '@/lib/domain/amp/socket'
import { cathodeResistorId, halfPrimaryId } from './reading-of-socket'
import { isBlank, type SocketEntry } from './reading-set'

type Known = { readonly socket: Socket; readonly entry: SocketEntry }

function sharesCathode(one: Socket, other: Socket, groupSize: number): boolean {
  if (one.cathodeOhms === null || one.cathodeOhms !== other.cathodeOhms) return false
  if (one.cathodeSharedBy < 2 || one.cathodeSharedBy !== other.cathodeSharedBy) return false
  if (one.cathodeSharedBy < groupSize && one.side === '') return false
  return cathodeResistorId(one, groupSize) === cathodeResistorId(other, groupSize)
}

function sharesHalf(one: Socket, other: Socket): boolean {
  if (one.halfPrimaryOhms === null || one.halfPrimaryOhms !== other.halfPrimaryOhms) return false
  return one.side !== '' && one.halfSharedBy > 1 && halfPrimaryId(one) === halfPrimaryId(other)
}

/** Volts only, so far: then the shared part tells the current. */
const methodWith = (entry: SocketEntry, method: SocketEntry['method']) => (entry.method === '' ? method : entry.method)

/** `group` are the output sockets of the match group, this one included. */
export function withSharedDrop(socket: Socket, entry: SocketEntry, group: readonly Known[], groupSize: number) {
  const others = group.filter((each) => each.socket.id !== socket.id)
  if (isBlank(entry)) return entry
  let known = entry
  if (known.halfDropVolts === null) {
    const read = others.find(({ socket: one, entry: its }) => its.halfDropVolts !== null && sharesHalf(socket, one))
    if (read)
      known = { ...known, halfDropVolts: read.entry.halfDropVolts, method: methodWith(known, 'half-primary-drop') }
  }
  if (known.cathodeVolts === null && socket.biasKind === 'cathode-resistor') {
    const isRead = ({ socket: one, entry: its }: Known) =>
      its.cathodeVolts !== null && sharesCathode(socket, one, groupSize)
    const read = others.find(isRead)
    if (read) known = { ...known, cathodeVolts: read.entry.cathodeVolts, method: methodWith(known, 'cathode-bias') }
  }
  return known
}
