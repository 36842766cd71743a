/**
 * What the last readings after the work say of idle, for the sign-off line: the
 * 95 % band of each output tube in per cent of its printed rating, and which
 * sockets cannot be judged from them.
 */
import type { Socket } from '@/lib/domain/amp/socket'
import type { BenchResult, SocketOutcome } from '@/lib/domain/bench/bench-result'
import type { ReadingSet } from '@/lib/domain/bench/reading-set'

/** Per cent of the printed plate rating. */
export type JudgedSocket = {
  readonly position: string
  readonly low: number
  readonly value: number
  readonly high: number
}

export type IdleEvidence = {
  readonly takenAt: Date
  readonly instrumentName: string
  readonly calibratedOn: string | null
  readonly judged: readonly JudgedSocket[]
  /** Output sockets without a band: not read, read in contradiction, or no rating known. */
  readonly unjudged: readonly string[]
  /** Draw next to nothing: a fault, however far below the rating. */
  readonly dead: readonly string[]
}

type Readings = { readonly set: ReadingSet; readonly result: BenchResult }

const isDead = (outcome: SocketOutcome | undefined) =>
  outcome?.kind === 'idle' && outcome.idle.cautions.some(({ kind }) => kind === 'dead-socket')

export function idleEvidence(sockets: readonly Socket[], { set, result }: Readings): IdleEvidence {
  const outcomes = new Map(result.sockets.map(({ socket, outcome }) => [socket.id, outcome]))
  const output = sockets.filter(({ role }) => role === 'output')
  const judged = output.flatMap(({ id, position }) => {
    const outcome = outcomes.get(id)
    const percent = outcome?.kind === 'idle' ? outcome.idle.platePercent : null
    return percent ? [{ position, low: percent.low, value: percent.value, high: percent.high }] : []
  })
  const known = new Set(judged.map(({ position }) => position))
  return {
    takenAt: set.takenAt,
    instrumentName: set.instrumentName,
    calibratedOn: set.calibratedOn,
    judged,
    unjudged: output.flatMap(({ position }) => (known.has(position) ? [] : [position])),
    dead: output.flatMap(({ id, position }) => (isDead(outcomes.get(id)) ? [position] : [])),
  }
}

/** The one whose band reaches highest. */
export const hottest = ({ judged }: IdleEvidence): JudgedSocket | null =>
  judged.reduce<JudgedSocket | null>((most, each) => (most === null || each.high > most.high ? each : most), null)

const percent = (value: number): string => `${value.toFixed(1)} %`

/** Rounded outward, so that the words claim no more than the readings. */
export const bandText = ({ low, high }: JudgedSocket): string =>
  `${percent(Math.floor(low * 10) / 10)} to ${percent(Math.ceil(high * 10 - 1e-9) / 10)}`

export const hottestText = (socket: JudgedSocket): string =>
  `${socket.position} highest: ${percent(socket.value)} (95 % band ${bandText(socket)})`
