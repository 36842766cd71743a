/**
 * Two ways of finding plate current, read at one socket, held against each other.
 *
 * Each way is computed as if it were the only one (idle.ts). Their difference
 *   d = Ia,1 − Ia,2
 * carries the errors of both with their signs, so what they share (the meter's gain, a
 * shared resistor, the assumed screen share) is counted once and may cancel; u(d) by
 * JCGM 100:2008, equation (13). They agree when |d| ≤ 2 u(d). An assumed equal split
 * is shared only where both ways measure the sum of the very same tubes; elsewhere it
 * is taken as two errors, which makes the band wider, never too narrow.
 *
 * Agreement within a wide band proves little, and is said to.
 */

import type { AmpSheet } from '@/lib/domain/amp/amp'
import type { Socket } from '@/lib/domain/amp/socket'
import { type Banded, banded } from '@/lib/domain/bias/banded'
import { sourceOfKey } from '@/lib/domain/bias/error-source'
import { computeIdle, type IdleResult } from '@/lib/domain/bias/idle'
import type { IdleWindows, SocketReading } from '@/lib/domain/bias/idle-reading'
import { scale, sub, type Uncertain } from '@/lib/domain/bias/uncertain'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import { idleContext, outputGroup, placeOf, type SocketResult } from './bench-result'
import { type Suspect, suspectsOf } from './cross-check-suspects'
import { readingOfSocket } from './reading-of-socket'
import { CURRENT_METHODS, type ReadingMethod, type ReadingSet, type SocketEntry } from './reading-set'

/** One way of finding the current, worked out alone. */
export type Way = {
  readonly method: Exclude<ReadingMethod, ''>
  readonly reading: SocketReading
  readonly idle: IdleResult
}

export type Comparison = {
  readonly one: Way
  readonly other: Way
  /** Plate current of the first less that of the second, A. */
  readonly difference: Banded
  /** The same in per cent of their mean. */
  readonly percent: number
  readonly agree: boolean
  /** The band of the difference is too wide to tell much. */
  readonly coarse: boolean
  /** Likeliest first; empty when they agree. */
  readonly suspects: readonly Suspect[]
}

export type CrossCheck = {
  readonly socket: string
  readonly comparisons: readonly Comparison[]
  /** With three ways of which two agree and neither agrees with the third: the third. */
  readonly oddOneOut: Way['method'] | null
}

/** Of the mean current. Common practice, no source: a set is trimmed to within some 10 %. */
const COARSE_SHARE = 0.2

type Bench = {
  readonly sheet: AmpSheet
  readonly set: ReadingSet
  readonly windows: IdleWindows
  readonly catalogue: TubeCatalogue
}

function waysAt({ sheet, set, windows, catalogue }: Bench, socket: Socket, entry: SocketEntry): Way[] {
  const place = placeOf(sheet, socket, catalogue)
  return CURRENT_METHODS.flatMap((method) => {
    // In an amplifier with supplied grid volts the cathode's own volts are no way of finding the current.
    if (method === 'cathode-bias' && socket.biasKind !== 'cathode-resistor') return []
    const reading = readingOfSocket(socket, { ...entry, method }, set, place)
    if (!reading.ok) return []
    const idle = computeIdle(reading.value, idleContext(sheet, socket, set, windows))
    return idle.ok ? [{ method, reading: reading.value, idle: idle.value }] : []
  })
}

const sharers = ({ reading: { method } }: Way): number => (method.kind === 'cathode-sense' ? 1 : method.sharedBy)

/** Both sum the same tubes: as many, on one side, and that side alone. */
function sameTubes(socket: Socket, groupSize: number, one: Way, other: Way): boolean {
  return sharers(one) === sharers(other) && socket.side !== '' && sharers(one) < groupSize
}

function plateCurrent({ method, idle }: Way, splitIsShared: boolean): Uncertain {
  const { value } = idle.plateAmps
  if (splitIsShared) return { value, errors: idle.plateAmpsErrors }
  const own = Object.entries(idle.plateAmpsErrors).map(([key, part]): [string, number] => [
    sourceOfKey(key).kind === 'equal-split' ? `${key}, by ${method}` : key,
    part,
  ])
  return { value, errors: Object.fromEntries(own) }
}

function compared({ sheet, set }: Bench, socket: Socket, one: Way, other: Way): Comparison {
  const group = outputGroup(sheet, socket.matchGroup)
  const { copperWarmingCelsius } = set
  const shared = sameTubes(socket, group.length, one, other)
  const [first, second] = [plateCurrent(one, shared), plateCurrent(other, shared)]
  const delta = sub(first, second)
  const mean = (first.value + second.value) / 2
  const difference = banded(delta, one.idle.plateAmps.estimate || other.idle.plateAmps.estimate)
  const agree = Math.abs(difference.value) <= difference.plusMinus
  return {
    one,
    other,
    difference,
    percent: mean > 0 ? scale(delta, 100 / mean).value : 0,
    agree,
    coarse: difference.plusMinus > COARSE_SHARE * Math.abs(mean),
    suspects: agree ? [] : suspectsOf({ socket, group, one, other, copperWarmingCelsius, splitIsShared: shared }),
  }
}

function oddOneOut(comparisons: readonly Comparison[]): CrossCheck['oddOneOut'] {
  const agreeing = comparisons.filter(({ agree }) => agree)
  if (comparisons.length !== 3 || agreeing.length !== 1) return null
  const [pair] = agreeing
  const methods = [...new Set(comparisons.flatMap(({ one, other }) => [one.method, other.method]))]
  return methods.find((method) => method !== pair?.one.method && method !== pair?.other.method) ?? null
}

/** Null where fewer than two ways can be worked out. */
export function crossCheck(bench: Bench, socket: Socket, entry: SocketEntry): CrossCheck | null {
  if (socket.role !== 'output') return null
  const ways = waysAt(bench, socket, entry)
  const comparisons = ways.flatMap((one, i) => ways.slice(i + 1).map((other) => compared(bench, socket, one, other)))
  if (comparisons.length === 0) return null
  const odd = oddOneOut(comparisons)
  return { socket: socket.position, comparisons: comparisons.map((each) => onlyOf(odd, each)), oddOneOut: odd }
}

/** Two ways that agree clear each other. */
function onlyOf(odd: CrossCheck['oddOneOut'], comparison: Comparison): Comparison {
  const suspects = comparison.suspects.filter(({ way }) => way === odd)
  return odd === null || suspects.length === 0 ? comparison : { ...comparison, suspects }
}

/** By socket id; sockets with one way only are left out. Of the sockets as `benchResult` worked them out, with drops read elsewhere on the same part. */
export function crossChecks(
  bench: Bench,
  results: readonly Pick<SocketResult, 'socket' | 'entry'>[],
): ReadonlyMap<string, CrossCheck> {
  const checks = results.flatMap(({ socket, entry }): [string, CrossCheck][] => {
    const check = crossCheck(bench, socket, entry)
    return check ? [[socket.id, check]] : []
  })
  return new Map(checks)
}
