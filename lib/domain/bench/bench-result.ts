/** A whole round of readings worked out: each output socket, and how alike they idle. */

import type { AmpSheet } from '@/lib/domain/amp/amp'
import type { Socket } from '@/lib/domain/amp/socket'
import { type GroupBalance, groupBalance } from '@/lib/domain/bias/group-balance'
import { computeIdle, type IdleResult } from '@/lib/domain/bias/idle'
import { type IdleFault, isIncomplete } from '@/lib/domain/bias/idle-fault'
import type { IdleContext, IdleWindow, IdleWindows } from '@/lib/domain/bias/idle-reading'
import type { PercentWindow, Shop } from '@/lib/domain/shop/shop'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import { ratio, volts } from '@/lib/domain/units'
import { type ReadingGap, readingOfSocket, type SocketPlace } from './reading-of-socket'
import { isBlank, type ReadingSet, type SocketEntry } from './reading-set'
import { withSharedDrop } from './shared-drop'

export type SocketOutcome =
  | { readonly kind: 'idle'; readonly idle: IdleResult }
  /** The readings cannot be true together. */
  | { readonly kind: 'contradiction'; readonly fault: IdleFault }
  /** Nothing is wrong with what was read; more is needed to work it out. */
  | { readonly kind: 'incomplete'; readonly fault: IdleFault }
  /** Something is not on the sheet or was not read. */
  | { readonly kind: 'gap'; readonly gap: ReadingGap }
  /** Not an output socket: its volts are kept, nothing is judged. */
  | { readonly kind: 'noted' }

/** `entry` with what was read at another socket of the same part. */
export type SocketResult = { readonly socket: Socket; readonly entry: SocketEntry; readonly outcome: SocketOutcome }

export type GroupResult = { readonly name: string; readonly balance: GroupBalance }

export type BenchResult = {
  /** In chassis order; sockets where nothing was read are left out. */
  readonly sockets: readonly SocketResult[]
  readonly groups: readonly GroupResult[]
}

type WindowSettings = Pick<Shop, 'idleFixed' | 'idleCathode' | 'idleSingle'>
/** Its windows, and the tube types it knows. */
export type BenchShop = WindowSettings & TubeCatalogue

const share = ({ low, high }: PercentWindow): IdleWindow => ({ low: ratio(low / 100), high: ratio(high / 100) })

export const idleWindows = ({ idleFixed, idleCathode, idleSingle }: WindowSettings): IdleWindows => ({
  gridSuppliedPushPull: share(idleFixed),
  cathodeResistor: share(idleCathode),
  singleEnded: share(idleSingle),
})

export const outputGroup = (sheet: AmpSheet, name: string): Socket[] =>
  sheet.sockets.filter((socket) => socket.role === 'output' && socket.matchGroup === name)

export const outputGroups = (sheet: AmpSheet): string[] => [
  ...new Set(sheet.sockets.filter(({ role }) => role === 'output').map(({ matchGroup }) => matchGroup)),
]

export const placeOf = (sheet: AmpSheet, socket: Socket, catalogue: TubeCatalogue): SocketPlace => ({
  groupSize: outputGroup(sheet, socket.matchGroup).length,
  catalogue,
  strapped: sheet.screenFeed === 'triode-strapped',
})

export function idleContext(sheet: AmpSheet, socket: Socket, set: ReadingSet, windows: IdleWindows): IdleContext {
  return {
    bias: socket.biasKind === 'cathode-resistor' ? 'cathode-resistor' : 'grid-supplied',
    service: sheet.amp.outputClass === 'single-ended' ? 'single-ended-class-a' : 'push-pull-class-ab',
    meter: set.meter,
    windows,
    wallVoltage: volts(set.wallVolts),
    markedMainsVoltage: volts(sheet.amp.mainsVolts),
  }
}

function outcomeOf(
  sheet: AmpSheet,
  socket: Socket,
  entry: SocketEntry,
  set: ReadingSet,
  shop: BenchShop,
): SocketOutcome {
  if (socket.role !== 'output') return { kind: 'noted' }
  const reading = readingOfSocket(socket, entry, set, placeOf(sheet, socket, shop))
  if (!reading.ok) return { kind: 'gap', gap: reading.fault }
  const idle = computeIdle(reading.value, idleContext(sheet, socket, set, idleWindows(shop)))
  if (idle.ok) return { kind: 'idle', idle: idle.value }
  return { kind: isIncomplete(idle.fault) ? 'incomplete' : 'contradiction', fault: idle.fault }
}

function groupResult(sockets: readonly SocketResult[], name: string): GroupResult {
  const members = sockets.flatMap(({ socket, outcome }) =>
    socket.matchGroup === name && outcome.kind === 'idle' ? [{ side: socket.side || null, idle: outcome.idle }] : [],
  )
  return { name, balance: groupBalance(members) }
}

function completed(sheet: AmpSheet, socket: Socket, typed: SocketEntry, entries: ReadonlyMap<string, SocketEntry>) {
  const group = outputGroup(sheet, socket.matchGroup)
  const known = group.flatMap((one) => {
    const entry = entries.get(one.id)
    return entry ? [{ socket: one, entry }] : []
  })
  return withSharedDrop(socket, typed, known, group.length)
}

export function benchResult(sheet: AmpSheet, set: ReadingSet, shop: BenchShop): BenchResult {
  const entries = new Map(set.entries.map((entry) => [entry.socketId, entry]))
  const sockets = sheet.sockets.flatMap((socket) => {
    const typed = entries.get(socket.id)
    if (!typed || isBlank(typed)) return []
    const entry = socket.role === 'output' ? completed(sheet, socket, typed, entries) : typed
    return [{ socket, entry, outcome: outcomeOf(sheet, socket, entry, set, shop) }]
  })
  return { sockets, groups: outputGroups(sheet).map((name) => groupResult(sockets, name)) }
}

/** A reading belongs to the tube it was taken on: what was read on another tube is left out. */
export function stillThere({ sockets, groups }: BenchResult, now: AmpSheet): BenchResult {
  const sits = new Map(now.sockets.map(({ id, typeFitted, markFitted }) => [id, `${typeFitted} ${markFitted}`]))
  const kept = sockets.filter(({ socket }) => sits.get(socket.id) === `${socket.typeFitted} ${socket.markFitted}`)
  return { sockets: kept, groups: kept.length === sockets.length ? groups : [] }
}
