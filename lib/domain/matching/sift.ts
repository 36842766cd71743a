/**
 * Which tubes of a stock may stand in these sockets, and why the others may not.
 *
 * `exclusionReasons` decides. A stock is long, so a flag is set for each figure of a tube that
 * breaks its limit, column by column, and for kinds that fail whatever their figures are: a tube
 * without a flag has nothing against it. Those with the same flags, of the same kind, have the
 * same kinds of reason, so it is asked once for each; and in full for those to be shown.
 */
import { money } from '../money'
import { ok, type Result } from '../result'
import { amps, siemens } from '../units'
import type { Candidate, MatchLimits, SocketDemand } from './candidate'
import { above, exclusionReasons } from './eligibility'
import { isUntrimmed } from './match-weights'
import { answerAt, columnOf, isSaid, type PredictedColumns } from './predicted-columns'
import type { PredictedTube, Predictions } from './predicted-tube'
import type { ExclusionCode, ExclusionReason } from './proposal'
import { dayNumber, type StockInOrder, tubeAt, UNDATED } from './stock-in-order'

export type Sifted = {
  /** Places, rising. */
  readonly usable: Int32Array
  /** Places, rising. */
  readonly excluded: Int32Array
  readonly reasonsAt: (place: number) => readonly ExclusionReason[]
  /** Of `reasonsAt`. */
  readonly codesAt: (place: number) => readonly ExclusionCode[]
}

type Sieve = {
  readonly stock: StockInOrder
  readonly columns: PredictedColumns | null
  readonly demand: SocketDemand
  /** Its predictions are left to `columns`. */
  readonly limits: MatchLimits
}

export function sift(sieve: Sieve): Sifted {
  const flags = flagsOf(sieve)
  const reasonsAt = reasonsIn(sieve)
  const codesAt = codesBy(sieve, flags, reasonsAt)
  const [usable, excluded] = [new Int32Array(flags.length), new Int32Array(flags.length)]
  let [passed, left] = [0, 0]
  for (let place = 0; place < flags.length; place += 1) {
    // The short way may doubt a tube that has nothing against it, so those without a code are asked themselves.
    if (flags[place] === 0 || (codesAt(place).length === 0 && reasonsAt(place).length === 0)) usable[passed++] = place
    else excluded[left++] = place
  }
  return { usable: usable.subarray(0, passed), excluded: excluded.subarray(0, left), reasonsAt, codesAt }
}

function reasonsIn({ stock, columns, demand, limits }: Sieve): Sifted['reasonsAt'] {
  return (place) => {
    const candidate = tubeAt(stock, place)
    const predictions = columns && predictionOf(candidate, answerAt(columns, place, candidate.tubeId))
    return exclusionReasons(candidate, demand, { ...limits, ...(predictions ? { predictions } : {}) })
  }
}

function codesBy(
  { stock: { kindOf, states } }: Sieve,
  flags: Uint8Array,
  reasonsAt: Sifted['reasonsAt'],
): Sifted['codesAt'] {
  const known = new Map<number, readonly ExclusionCode[]>()
  const asked = (place: number) => reasonsAt(place).map(({ code }) => code)
  return (place) => {
    // Why it is taken is not among the flags.
    if (states.has(place)) return asked(place)
    const alike = (kindOf[place] as number) * ALL_FLAGS + (flags[place] as number)
    const codes = known.get(alike) ?? asked(place)
    known.set(alike, codes)
    return codes
  }
}

const FLAG = { taken: 1, kind: 2, dead: 4, dear: 8, old: 16, ahead: 32, unsaid: 64, hot: 128 } as const
const ALL_FLAGS = 256

/** By place; 0: `exclusionReasons` has nothing against the tube. */
function flagsOf(sieve: Sieve): Uint8Array {
  const flags = new Uint8Array(sieve.stock.marks.length)
  for (const place of sieve.stock.states.keys()) flags[place] = FLAG.taken
  flagKinds(flags, sieve)
  flagFigures(flags, sieve)
  flagAges(flags, sieve)
  flagPredictions(flags, sieve)
  return flags
}

function flagKinds(flags: Uint8Array, { stock: { kinds, kindOf }, demand, limits, columns }: Sieve): void {
  const ofKind = Uint8Array.from(kinds, (kind) => (passesBut(kind, demand, limits, columns !== null) ? 0 : FLAG.kind))
  for (let place = 0; place < flags.length; place += 1) {
    flags[place] = (flags[place] as number) | (ofKind[kindOf[place] as number] as number)
  }
}

function flagFigures(flags: Uint8Array, { stock, limits }: Sieve): void {
  const { kinds, kindOf, microamps, microsiemens, price } = stock
  const cap = limits.priceCap ?? Number.POSITIVE_INFINITY
  const leastSlope = Int32Array.from(kinds, ({ test }) => (test?.transconductance === null ? UNDATED : 1))
  for (let place = 0; place < flags.length; place += 1) {
    const isAlive =
      (microamps[place] as number) > 0 &&
      (microsiemens[place] as number) >= (leastSlope[kindOf[place] as number] as number)
    if (!isAlive) flags[place] = (flags[place] as number) | FLAG.dead
    if ((price[place] as number) > cap) flags[place] = (flags[place] as number) | FLAG.dear
  }
}

function flagAges(flags: Uint8Array, { stock: { testDay }, limits: { asOf, maximumTestAgeDays } }: Sieve): void {
  const today = dayNumber(asOf)
  // One day ahead is a matter of time zones: exclusionReasons says so too.
  const latest = today + 1
  const earliest = maximumTestAgeDays === null ? UNDATED + 1 : today - maximumTestAgeDays
  for (let place = 0; place < flags.length; place += 1) {
    const day = testDay[place] as number
    if (day < earliest || today === UNDATED) flags[place] = (flags[place] as number) | FLAG.old
    if (day > latest) flags[place] = (flags[place] as number) | FLAG.ahead
  }
}

function flagPredictions(flags: Uint8Array, { stock, columns, demand: { arrangement } }: Sieve): void {
  if (!columns) return
  const { kinds, kindOf } = stock
  const bounded = isUntrimmed(arrangement)
  const power = columnOf(columns, 'power')
  const ratings = kinds.map(({ ratings }) => ratings.maxPlateDissipation ?? Number.POSITIVE_INFINITY)
  for (let place = 0; place < flags.length; place += 1) {
    if (!isSaid(columns, place)) flags[place] = (flags[place] as number) | FLAG.unsaid
    else if (
      bounded &&
      above(power[columns.rowOf[place] as number] as number, ratings[kindOf[place] as number] as number)
    ) {
      flags[place] = (flags[place] as number) | FLAG.hot
    }
  }
}

/** Of a kind, with everything in order that differs within it. */
function passesBut(kind: Candidate, demand: SocketDemand, limits: MatchLimits, predicted: boolean): boolean {
  if (!kind.test) return false
  const transconductance = kind.test.transconductance === null ? null : siemens(1)
  const test = { ...kind.test, testedAt: limits.asOf, plateCurrent: amps(1), transconductance }
  const tube = { ...kind, state: { kind: 'free' }, price: money(0), test } as const
  const predictions = predicted ? { predictions: predictionOf(kind, ok(COLD)) } : {}
  return exclusionReasons(tube, demand, { ...limits, priceCap: null, ...predictions }).length === 0
}

type Answer = Result<PredictedTube, string>

const NOTHING = { value: 0, low: 0, high: 0 }
const COLD: PredictedTube = {
  plateCurrent: NOTHING,
  byReadings: amps(0),
  transconductance: NOTHING,
  plateDissipation: NOTHING,
  extrapolated: false,
}

const predictionOf = ({ tubeId }: Candidate, answer: Answer | undefined): Predictions => ({
  readOn: '',
  ofTube: new Map(answer ? [[tubeId, answer]] : []),
})
