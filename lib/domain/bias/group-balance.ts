/**
 * How alike the sockets of one output group idle, and how well the two sides
 * of a push-pull primary balance.
 *
 * Spread is the largest less the smallest plate current. Sockets read with one
 * meter share its gain error, which all but cancels in a difference; the bands
 * here take that into account. A shared resistor tells only the sum of its
 * tubes, so nothing is said of tubes that were split from one sum. Beside a dead
 * socket there is nothing to compare.
 */
import { type Banded, banded } from './banded'
import { sourceOfKey } from './error-source'
import type { IdleResult } from './idle'
import { add, div, exactly, scale, sub, type Uncertain } from './uncertain'

export type GroupMember = {
  readonly side: 'A' | 'B' | null
  readonly idle: Pick<IdleResult, 'socket' | 'method' | 'plateAmps' | 'plateAmpsErrors' | 'estimates' | 'cautions'>
}

/** Volts and amps as in `Banded`: amps, and per cent of the mean current. */
export type Difference = { readonly amps: Banded; readonly percent: Banded }

export type GroupBalance = {
  /** Null: fewer than two sockets, or a current that is only a part of a shared sum. */
  readonly spread: (Difference & { readonly hottest: string; readonly coldest: string }) | null
  /** True when some current is only an assumed part of a measured sum. */
  readonly fromSum: boolean
  /** Mean per tube of side A less that of side B. Null: a side is missing or cannot be told from the sum. */
  readonly sides: Difference | null
}

const isSplit = ({ idle }: GroupMember): boolean => idle.estimates.some(({ kind }) => kind === 'equal-split-assumed')

const current = ({ idle }: GroupMember): Uncertain => ({ value: idle.plateAmps.value, errors: idle.plateAmpsErrors })

/** The mean of a side is known even where its parts are not. */
function withoutSplit({ value, errors }: Uncertain): Uncertain {
  const kept = Object.entries(errors).filter(([key]) => sourceOfKey(key).kind !== 'equal-split')
  return { value, errors: Object.fromEntries(kept) }
}

const mean = (currents: readonly Uncertain[]): Uncertain => scale(currents.reduce(add, exactly(0)), 1 / currents.length)

function difference(a: Uncertain, b: Uncertain, reference: Uncertain, estimate: boolean): Difference | null {
  if (reference.value <= 0) return null
  const delta = sub(a, b)
  return { amps: banded(delta, estimate), percent: banded(scale(div(delta, reference), 100), estimate) }
}

const anyEstimate = (members: readonly GroupMember[]): boolean => members.some(({ idle }) => idle.plateAmps.estimate)

function spreadOf(members: readonly GroupMember[]): GroupBalance['spread'] {
  if (members.length < 2 || members.some(isSplit)) return null
  const sorted = [...members].sort((a, b) => b.idle.plateAmps.value - a.idle.plateAmps.value)
  const [hottest, coldest] = [sorted[0], sorted.at(-1)]
  if (!hottest || !coldest) return null
  const delta = difference(current(hottest), current(coldest), mean(members.map(current)), anyEstimate(members))
  return delta && { ...delta, hottest: hottest.idle.socket, coldest: coldest.idle.socket }
}

/** A winding belongs to one side; a cathode resistor may be shared across both. */
const tellsItsSide = (member: GroupMember): boolean => !isSplit(member) || member.idle.method === 'half-primary-drop'

function sidesOf(members: readonly GroupMember[]): Difference | null {
  const on = (side: 'A' | 'B') => members.filter((member) => member.side === side)
  const [a, b] = [on('A'), on('B')]
  if (a.length === 0 || b.length === 0 || !members.every(tellsItsSide)) return null
  const meanOf = (side: readonly GroupMember[]) => mean(side.map((member) => withoutSplit(current(member))))
  const [meanA, meanB] = [meanOf(a), meanOf(b)]
  return difference(meanA, meanB, mean([meanA, meanB]), anyEstimate([...a, ...b]))
}

const isDead = ({ idle }: GroupMember): boolean => idle.cautions.some(({ kind }) => kind === 'dead-socket')

export function groupBalance(members: readonly GroupMember[]): GroupBalance {
  if (members.some(isDead)) return { spread: null, fromSum: false, sides: null }
  return { spread: spreadOf(members), fromSum: members.some(isSplit), sides: sidesOf(members) }
}
