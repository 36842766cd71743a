/**
 * Where the grids stand: as read at the pins, else as noted, else left to be implied by the
 * currents (calibrated-tubes.ts). To chassis, at the mains while reading.
 *
 * A meter of Rm at a grid fed through a leak of Rl reads Rm/(Rm + Rl) of the volts: 10 MΩ
 * at 220 kΩ reads 2 % low. That is corrected where the leak is known. Without a grid supply
 * the leak goes to chassis, and what stands on the grid is its reverse current in the leak.
 */
import type { BiasKind } from '@/lib/domain/bias/idle-reading'
import { meterReading } from '@/lib/domain/bias/meter'
import { standardUncertainty } from '@/lib/domain/bias/uncertain'
import type { Assumption } from '@/lib/domain/circuit/amp/assumption'
import type { CircuitGiven } from '@/lib/domain/circuit/amp/circuit-given'
import type { GridSupply, VoltageRange } from '@/lib/domain/circuit/output-stage'
import { type Amps, amps, volts } from '@/lib/domain/units'
import type { ReadSocket } from './read-socket'

export type SocketGrid = {
  /** Null: the leak goes to chassis. */
  readonly supply: string | null
  readonly reverseCurrent: Amps
}

export type Grids = {
  /** In the order of the sockets. */
  readonly sockets: readonly SocketGrid[]
  readonly supplies: readonly GridSupply[]
  /** Nobody read or noted them: the volts stand at zero until the currents imply them. */
  readonly implied: boolean
  /** Standard uncertainty of the supplies' volts as read; null where they are implied or there are none. */
  readonly standard: number | null
  readonly assumptions: readonly Assumption[]
}

export const SHARED_SUPPLY = 'grid supply'
const ownSupply = ({ socket }: ReadSocket) => `${socket.position} grid supply`

/** Grids that read closer together hang on one adjustment. Common practice, no source. */
const ALIKE_SHARE = 0.02
/** Below this a grid that goes to chassis reads the meter's zero. Common practice, no source. */
const ZERO_VOLTS = 0.1
/** How well a figure on the sheet is believed, as a share. Common practice, no source. */
const NOTED_SHARE = 0.01

const isSupplied = ({ bias }: { readonly bias: BiasKind }): boolean => bias === 'grid-supplied'
const positions = (sockets: readonly ReadSocket[]): string[] => sockets.map(({ socket }) => socket.position)
const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length

/** From what the meter showed to what stands there without it. */
function unloading({ facts, set }: CircuitGiven): number {
  return facts.gridLeakOhms === null ? 1 : 1 + facts.gridLeakOhms / set.meter.inputResistance
}

function rangeOf({ facts }: CircuitGiven): VoltageRange | null {
  const { gridColdestVolts, gridHottestVolts } = facts
  if (gridColdestVolts === null || gridHottestVolts === null) return null
  const ends = [-Math.abs(gridColdestVolts), -Math.abs(gridHottestVolts)]
  return { lowest: volts(Math.min(...ends)), highest: volts(Math.max(...ends)) }
}

type Known = {
  readonly bySocket: readonly (number | null)[]
  readonly standard: number
  readonly said: readonly Assumption[]
}

function readAtPins(given: CircuitGiven, supplied: readonly ReadSocket[]): Known | null {
  const factor = unloading(given)
  const read = supplied.map(({ entry }) => (entry?.gridVolts == null ? null : entry.gridVolts * factor))
  const found = read.filter((value) => value !== null)
  if (found.length === 0) return null
  const middle = mean(found)
  const missing = supplied.filter((_, i) => read[i] === null)
  const meter = meterReading(given.set.meter, volts(middle), 'grid volts')
  const loaded: Assumption =
    given.facts.gridLeakOhms === null
      ? { code: 'grid-leak-not-known' }
      : { code: 'grid-loading-corrected', percent: 100 * (factor - 1) }
  return {
    bySocket: read.map((value) => value ?? middle),
    standard: standardUncertainty(meter),
    said: [
      loaded,
      ...(missing.length > 0
        ? [{ code: 'grid-volts-of-others', volts: middle, sockets: positions(missing) } satisfies Assumption]
        : []),
    ],
  }
}

function noted({ facts, set, sheet }: CircuitGiven, supplied: readonly ReadSocket[]): Known | null {
  if (facts.gridSupplyVolts === null) return null
  const nominal = -Math.abs(facts.gridSupplyVolts)
  const value = (nominal * set.wallVolts) / sheet.amp.mainsVolts
  return {
    bySocket: supplied.map(() => value),
    standard: Math.abs(NOTED_SHARE * value),
    said: [{ code: 'grid-volts-from-sheet', volts: nominal, sockets: positions(supplied) }],
  }
}

function suppliesOf(given: CircuitGiven, supplied: readonly ReadSocket[], known: Known, mainsFactor: number) {
  const range = rangeOf(given)
  const values = known.bySocket.map((value) => value ?? 0)
  const middle = mean(values)
  const alike = values.every((value) => Math.abs(value - middle) <= Math.abs(ALIKE_SHARE * middle))
  if (alike) return [{ id: SHARED_SUPPLY, voltage: volts(middle / mainsFactor), range }]
  return supplied.map((socket, i) => ({
    id: ownSupply(socket),
    voltage: volts((values[i] ?? middle) / mainsFactor),
    range,
  }))
}

/** Reverse grid current of a tube whose leak goes to chassis. */
function reverseOf({ facts }: CircuitGiven, { entry }: ReadSocket): Amps {
  const read = entry?.gridVolts ?? 0
  if (read <= ZERO_VOLTS || !facts.gridLeakOhms) return amps(0)
  return amps(read / facts.gridLeakOhms)
}

function impliedGrids(given: CircuitGiven, sockets: readonly ReadSocket[]): Grids {
  return {
    sockets: sockets.map((one) => ({ supply: isSupplied(one) ? SHARED_SUPPLY : null, reverseCurrent: amps(0) })),
    supplies: [{ id: SHARED_SUPPLY, voltage: volts(0), range: rangeOf(given) }],
    implied: true,
    standard: null,
    assumptions: [],
  }
}

export function gridsFromReadings(given: CircuitGiven, sockets: readonly ReadSocket[], mainsFactor: number): Grids {
  const supplied = sockets.filter(isSupplied)
  const toChassis = sockets.filter((one) => !isSupplied(one))
  const unread = toChassis.filter(({ entry }) => entry?.gridVolts == null)
  const grounded: Assumption[] =
    unread.length > 0 ? [{ code: 'grid-taken-at-chassis', sockets: positions(unread) }] : []
  const chassis = (one: ReadSocket): SocketGrid => ({ supply: null, reverseCurrent: reverseOf(given, one) })
  if (supplied.length === 0) {
    return { sockets: sockets.map(chassis), supplies: [], implied: false, standard: null, assumptions: grounded }
  }
  const known = readAtPins(given, supplied) ?? noted(given, supplied)
  if (!known) return { ...impliedGrids(given, sockets), assumptions: grounded }
  const supplies = suppliesOf(given, supplied, known, mainsFactor)
  const shared = supplies[0]?.id === SHARED_SUPPLY
  return {
    sockets: sockets.map((one) =>
      isSupplied(one) ? { supply: shared ? SHARED_SUPPLY : ownSupply(one), reverseCurrent: amps(0) } : chassis(one),
    ),
    supplies,
    implied: false,
    standard: known.standard,
    assumptions: [...grounded, ...known.said],
  }
}
