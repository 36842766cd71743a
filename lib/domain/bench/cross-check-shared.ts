/**
 * A cathode resistor that several tubes share, against their own sense resistors.
 *
 * Kirchhoff's first law: what flows through the shared resistor is the sum of the sharers'
 * cathode currents,
 *   (Vk − Vsense)/Rk = Σ Vsense,i/Rsense,i,
 * Vk read at a cathode, above its own sense resistor. The difference carries the errors of
 * both sides with their signs, what they share counted once (JCGM 100:2008, equation 13);
 * they agree within 2 u. Screens do not enter: both sides hold them.
 *
 * Who is to blame when not is ranked as in cross-check-suspects.ts: how far the shared
 * resistor, a leak across it, or one sense resistor alone would have to be off.
 */
import type { AmpSheet } from '@/lib/domain/amp/amp'
import type { Socket } from '@/lib/domain/amp/socket'
import { type Banded, banded } from '@/lib/domain/bias/banded'
import { readCurrents } from '@/lib/domain/bias/idle-currents'
import type { IdleWindows, SocketReading } from '@/lib/domain/bias/idle-reading'
import { add, exactly, scale, sub, type Uncertain } from '@/lib/domain/bias/uncertain'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import { volts } from '@/lib/domain/units'
import { idleContext, outputGroup, placeOf } from './bench-result'
import type { Suspect } from './cross-check-suspects'
import { cathodeResistorId, readingOfSocket } from './reading-of-socket'
import { isBlank, type ReadingSet, type SocketEntry } from './reading-set'

type Bench = {
  readonly sheet: AmpSheet
  readonly set: ReadingSet
  readonly windows: IdleWindows
  readonly catalogue: TubeCatalogue
}

export type SharedCheck = {
  /** Name of the shared resistor. */
  readonly resistor: string
  readonly sockets: readonly string[]
  /** Through the shared resistor, A. */
  readonly through: Banded
  /** Sum of the sharers' own, A. */
  readonly sum: Banded
  /** `through` less `sum`. */
  readonly difference: Banded
  readonly percent: number
  readonly agree: boolean
  /** Likeliest first; empty when they agree. */
  readonly suspects: readonly Suspect[]
}

type Sharer = {
  readonly socket: Socket
  readonly entry: SocketEntry
  readonly reading: SocketReading
  readonly own: Uncertain
}

/** How far parts go in amplifiers that come to the bench. Common practice, no source; as in cross-check-suspects.ts. */
const USUAL = { sense: 0.05, cathode: 0.1, bypass: 0.15 }
/** A part this many times off is another fault than drift. */
const FARTHEST = 3
const SHOWN = 4

function sharerOf(bench: Bench, socket: Socket): Sharer | null {
  const { sheet, set, catalogue } = bench
  const entry = set.entries.find(({ socketId }) => socketId === socket.id)
  if (!entry || isBlank(entry) || entry.senseDropVolts === null) return null
  const place = placeOf(sheet, socket, catalogue)
  const found = readingOfSocket(socket, { ...entry, method: 'cathode-sense' }, set, place)
  if (!found.ok) return null
  const currents = readCurrents(found.value, idleContext(sheet, socket, set, bench.windows))
  return currents.ok ? { socket, entry, reading: found.value, own: currents.value.cathode } : null
}

/** What flows through the shared resistor by the volts at one cathode. */
function throughBy(bench: Bench, { socket, entry }: Sharer): { current: Uncertain; reading: SocketReading } | null {
  const { sheet, set, catalogue } = bench
  if (entry.cathodeVolts === null) return null
  const across = entry.cathodeVolts - (entry.senseDropVolts ?? 0)
  const asBias = { ...entry, method: 'cathode-bias' as const, cathodeVolts: volts(across) }
  const found = readingOfSocket(socket, asBias, set, placeOf(sheet, socket, catalogue))
  if (!found.ok || found.value.method.kind !== 'cathode-bias') return null
  const reading: SocketReading = { ...found.value, method: { ...found.value.method, sharedBy: 1 } }
  const currents = readCurrents(reading, idleContext(sheet, socket, set, bench.windows))
  return currents.ok ? { current: currents.value.cathode, reading } : null
}

const drift = (ratio: number): boolean => ratio <= FARTHEST && ratio >= 1 / FARTHEST
const strain = (ratio: number, usual: number): number => Math.abs(ratio - 1) / usual

/** `ratio`: current through the shared resistor over the sum. */
function sharedSuspects({ method }: SocketReading, ratio: number): Suspect[] {
  const { id: part, resistance: sheetOhms } = method.resistor
  if (!drift(ratio)) return []
  const neededOhms = sheetOhms * ratio
  const way = 'cathode-bias' as const
  const off: Suspect = {
    kind: 'cathode-resistor',
    way,
    part,
    sheetOhms,
    neededOhms,
    strain: strain(ratio, USUAL.cathode),
  }
  if (ratio >= 1) return [off]
  const leakOhms = 1 / (1 / neededOhms - 1 / sheetOhms)
  return [off, { kind: 'bypass-leak', way, part, leakOhms, strain: strain(ratio, USUAL.bypass) }]
}

/** One sense resistor alone, the others right. */
function senseSuspects(sharers: readonly Sharer[], missing: number): Suspect[] {
  return sharers.flatMap(({ own, reading }): Suspect[] => {
    const needed = own.value + missing
    const ratio = own.value / needed
    if (needed <= 0 || !drift(ratio)) return []
    const { id: part, resistance: sheetOhms } = reading.method.resistor
    const size = strain(ratio, USUAL.sense)
    return [
      { kind: 'sense-resistor', way: 'cathode-sense', part, sheetOhms, neededOhms: sheetOhms * ratio, strain: size },
    ]
  })
}

function checkOf(bench: Bench, resistor: string, sockets: readonly Socket[]): SharedCheck | null {
  const sharers = sockets.flatMap((one) => sharerOf(bench, one) ?? [])
  const shared = sockets[0]?.cathodeSharedBy ?? 0
  if (sharers.length < 2 || sharers.length !== sockets.length || sharers.length !== shared) return null
  const total = sharers.map((one) => throughBy(bench, one)).find((one) => one !== null)
  if (!total) return null
  const sum = sharers.reduce((all, { own }) => add(all, own), exactly(0))
  const delta = sub(total.current, sum)
  const difference = banded(delta, false)
  const agree = Math.abs(difference.value) <= difference.plusMinus
  const ratio = total.current.value / sum.value
  const suspects = [...sharedSuspects(total.reading, ratio), ...senseSuspects(sharers, delta.value)]
  return {
    resistor,
    sockets: sharers.map(({ socket }) => socket.position),
    through: banded(total.current, false),
    sum: banded(sum, false),
    difference,
    percent: sum.value > 0 ? scale(delta, 100 / sum.value).value : 0,
    agree,
    suspects: agree || !(sum.value > 0) ? [] : suspects.sort((a, b) => a.strain - b.strain).slice(0, SHOWN),
  }
}

/** One for every shared cathode resistor all of whose sharers have a sense resistor that was read; none otherwise. */
export function sharedChecks(bench: Bench): readonly SharedCheck[] {
  const byResistor = new Map<string, Socket[]>()
  for (const socket of bench.sheet.sockets) {
    if (socket.role !== 'output' || socket.cathodeSharedBy < 2 || socket.cathodeOhms === null) continue
    const id = cathodeResistorId(socket, outputGroup(bench.sheet, socket.matchGroup).length)
    byResistor.set(id, [...(byResistor.get(id) ?? []), socket])
  }
  return [...byResistor].flatMap(([id, sockets]) => checkOf(bench, id, sockets) ?? [])
}
