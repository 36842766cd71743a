/**
 * The socket as the sheet, the supply facts and the last readings know it.
 *
 * Of a group the highest readings count, as a set is fitted to all of its sockets. The
 * heater current drawn is that of every type on the sheet that is no rectifier: which of
 * them share the winding is not noted, so all are taken to (the careful reading).
 */
import type { AmpSheet } from '../amp/amp'
import type { Socket } from '../amp/socket'
import type { SupplyFacts } from '../amp/supply-facts'
import { type BenchResult, type BenchShop, idleWindows, outputGroup, type SocketResult } from '../bench/bench-result'
import { idleWindow } from '../bias/idle-verdict'
import { findTubeType } from '../tube/find-tube-type'
import type { TubeCatalogue } from '../tube/tube-catalogue'
import { amps, ohms, type Volts, volts } from '../units'
import type { AmpSocket, SocketBias } from './amp-socket'

export type KnownAmp = {
  readonly sheet: AmpSheet
  readonly supply: SupplyFacts
  /** The newest round of readings; null: none yet. */
  readonly result: Pick<BenchResult, 'sockets'> | null
  readonly shop: BenchShop
}

const highest = (values: readonly (number | null)[]): Volts | null => {
  const known = values.filter((value) => value !== null)
  return known.length === 0 ? null : volts(Math.max(...known))
}

const maybe = <T>(value: number | null, unit: (value: number) => T): T | null => (value === null ? null : unit(value))

/** Null: no type is noted there, or one that is not known, so there is nothing to compare with. */
export function ampSocket(socket: Socket, amp: KnownAmp): AmpSocket | null {
  const made = findTubeType(socket.typeFitted, amp.shop)
  if (!made) return null
  const group = socket.role === 'output' ? outputGroup(amp.sheet, socket.matchGroup) : [socket]
  const ids = new Set(group.map(({ id }) => id))
  const read = (amp.result?.sockets ?? []).filter((each) => ids.has(each.socket.id))
  const { supply } = amp
  return {
    position: group.map(({ position }) => position).join(', '),
    made,
    count: group.length,
    plateToCathode: highest(read.map(plateToCathode)),
    screenToCathode: highest(read.map(screenToCathode)),
    bias: biasOf(socket, supply, read),
    window: windowOf(socket, amp),
    gridLeak: socket.role === 'output' ? maybe(supply.gridLeakOhms, ohms) : null,
    plateLoad: socket.role === 'output' ? maybe(amp.sheet.amp.plateLoadOhms, ohms) : null,
    heaterWinding: made.role === 'rectifier' ? null : heaterWinding(amp),
    reservoirMicrofarads: supply.reservoirMicrofarads,
    supplyCurrent: supplyCurrent(amp),
  }
}

const idleOf = ({ outcome }: SocketResult) => (outcome.kind === 'idle' ? outcome.idle : null)

function plateToCathode(each: SocketResult): number | null {
  const idle = idleOf(each)
  if (idle) return idle.plateToCathodeVolts.value
  const { plateVolts, cathodeVolts } = each.entry
  return plateVolts === null || cathodeVolts === null ? null : plateVolts - cathodeVolts
}

/** The cathode's own volts, known from the plate's, are taken off. */
function screenToCathode(each: SocketResult): number | null {
  const across = plateToCathode(each)
  const { plateVolts, screenVolts } = each.entry
  return across === null || plateVolts === null || screenVolts === null ? null : screenVolts - (plateVolts - across)
}

function biasOf(socket: Socket, supply: SupplyFacts, read: readonly SocketResult[]): SocketBias | null {
  if (socket.role !== 'output' || socket.biasKind === '') return null
  if (socket.biasKind === 'cathode-resistor')
    return {
      kind: 'cathode-resistor',
      resistance: maybe(socket.cathodeOhms, ohms),
      sharedBy: Math.max(1, socket.cathodeSharedBy),
    }
  return {
    kind: 'grid-supplied',
    now: highest(read.map(({ entry }) => entry.gridVolts)) ?? maybe(supply.gridSupplyVolts, volts),
    coldest: maybe(supply.gridColdestVolts, volts),
    hottest: maybe(supply.gridHottestVolts, volts),
  }
}

function windowOf({ role, biasKind }: Socket, { sheet, shop }: KnownAmp): AmpSocket['window'] {
  if (role !== 'output' || biasKind === '') return null
  const service = sheet.amp.outputClass === 'single-ended' ? 'single-ended-class-a' : 'push-pull-class-ab'
  return idleWindow({ bias: biasKind, service, windows: idleWindows(shop) })
}

const heaterAmps = (socket: Socket, catalogue: TubeCatalogue): number | null => {
  const variant = findTubeType(socket.typeFitted, catalogue)
  if (!variant || variant.role === 'rectifier') return variant ? 0 : null
  // The parallel connection of a centre-tapped heater is the one on a 6.3 V winding.
  return Math.max(...variant.heaters.map(({ amps: { value } }) => value))
}

function heaterWinding({ sheet, supply, shop }: KnownAmp): AmpSocket['heaterWinding'] {
  if (supply.heaterWindingAmps === null) return null
  const each = sheet.sockets.map((socket) => heaterAmps(socket, shop))
  if (each.some((value) => value === null)) return null
  return { limit: amps(supply.heaterWindingAmps), drawn: amps(each.reduce<number>((sum, one) => sum + (one ?? 0), 0)) }
}

/** Only when every output tube was read: part of it would flatter a rectifier. */
function supplyCurrent({ sheet, result }: KnownAmp): AmpSocket['supplyCurrent'] {
  const outputs = sheet.sockets.filter(({ role }) => role === 'output')
  const currents = outputs.map(({ id }) => {
    const each = result?.sockets.find(({ socket }) => socket.id === id)
    return each ? (idleOf(each)?.cathodeAmps.value ?? null) : null
  })
  if (currents.length === 0 || currents.some((value) => value === null)) return null
  return amps(currents.reduce<number>((sum, one) => sum + (one ?? 0), 0))
}
