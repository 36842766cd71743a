/**
 * How far the doubt about the tubes reaches into a solved output stage.
 *
 * Fitted, a circuit answers: a cathode resistor or a soft supply holds back a strong tube.
 * So each tube's scales are moved a little in turn (perveance P, amplification factor µ,
 * screen share r), the stage is solved anew, and the slopes of the answer y are taken. Then
 *   u(y)² = Σ terms² + Σ_tubes sᵀ·C·s   (JCGM 100:2008, equation 13), with
 *   the curves: one error of ln I for all tubes with the same curves, to first order one of
 *     ln P in each, so their terms add before squaring (5.2.2);
 *   the tube: C, the covariance of its scales, and s, the slopes of y by them;
 *   the screen: what its current is known less well by than these two say. It leaves the
 *     plate current at fixed voltages alone, which is a step of one in ln r and Ig2/Ik in
 *     ln P; shared by all tubes with the same curves, as the handbook's figures are.
 * With no resistance anywhere this is the band of predicted-idle.ts.
 *
 * To these come doubts of the circuit itself that the caller knows of (`PartDoubt`: grid
 * volts that nobody read), each independent: its own slope times its standard uncertainty.
 *
 * First order: good while u stays below some 20 %. No error of the circuit's parts or
 * supplies is in it but those given.
 */

import { type IndividualTube, scaleUncertainty } from '@/lib/domain/model/individual-tube'
import type { PredictedIdle } from '@/lib/domain/model/predicted-idle'
import { AS_TYPE, type LogScales, loggedPoint, SCALES, scaledTube } from '@/lib/domain/model/tube-scales'
import { ok, type Result } from '@/lib/domain/result'
import type { Band } from './band'
import type { IdleSolution, TubeIdle } from './idle-solution'
import type { OutputStage } from './output-stage'
import type { SolveFault } from './solve-fault'
import { solveIdle } from './solve-idle'

/** Amperes and watts get bands of their logarithm, volts of themselves. The last is plate and screen together. */
const LOGGED = [
  'plateCurrent',
  'screenCurrent',
  'cathodeCurrent',
  'plateDissipation',
  'screenDissipation',
  'tubeDissipation',
] as const
const PLAIN = ['plateToCathode', 'screenToCathode', 'gridToCathode'] as const
export type BandedKey = (typeof LOGGED)[number] | (typeof PLAIN)[number]

export type TubeBands = Readonly<Record<BandedKey, Band>>

/** `predicted` at the tube's own voltages in the solution. */
export type Doubt = { readonly tube: IndividualTube; readonly predicted: PredictedIdle }

/** Something of the circuit that is known to a standard uncertainty only. */
export type PartDoubt = {
  readonly name: string
  readonly standard: number
  /** The stage with that quantity moved by `step`, in its own unit. */
  readonly moved: (step: number) => OutputStage
}

/** Of its standard uncertainty. */
const PART_STEP = 0.1

/** Small beside any doubt, large beside the solver's own error. */
const NUDGE = 1e-3
const COVERAGE = 2
/** Beyond this a band says nothing; it keeps its ends finite. */
const WIDEST = 10
/** Keeps the logarithm of a cut-off tube finite, A or W. */
const FLOOR = 1e-15

const isLogged = (key: BandedKey): boolean => (LOGGED as readonly string[]).includes(key)
const amountOf = (idle: TubeIdle, key: BandedKey): number =>
  key === 'tubeDissipation' ? idle.plateDissipation + idle.screenDissipation : idle[key]
const measure = (idle: TubeIdle, key: BandedKey): number =>
  isLogged(key) ? Math.log(Math.max(amountOf(idle, key), FLOOR)) : amountOf(idle, key)

type Pair = { readonly up: IdleSolution; readonly down: IdleSolution }
/** One tube's doubt, with the stage solved on both sides of each of its scales. */
type Moved = Doubt & {
  readonly byScale: readonly Pair[]
  readonly screenPerCathode: number
  readonly screenOnly: number
}

function nudged(stage: OutputStage, index: number, scale: number, step: number): OutputStage {
  const [p, mu, r] = AS_TYPE.map((zero, i) => (i === scale ? step : zero))
  const scales: LogScales = [p ?? 0, mu ?? 0, r ?? 0]
  return {
    ...stage,
    tubes: stage.tubes.map((one, i) => (i === index ? { ...one, tube: scaledTube(one.tube, scales) } : one)),
  }
}

function pairBy(stage: OutputStage, index: number, scale: number, near: IdleSolution): Result<Pair, SolveFault> {
  const up = solveIdle(nudged(stage, index, scale, NUDGE), near)
  if (!up.ok) return up
  const down = solveIdle(nudged(stage, index, scale, -NUDGE), near)
  return down.ok ? ok({ up: up.value, down: down.value }) : down
}

function movedPart({ standard, moved: stageAt }: PartDoubt, near: IdleSolution): Result<Pair, SolveFault> {
  const step = PART_STEP * standard
  const up = solveIdle(stageAt(step), near)
  if (!up.ok) return up
  const down = solveIdle(stageAt(-step), near)
  return down.ok ? ok({ up: up.value, down: down.value }) : down
}

/** Share of ln Ig2 that neither the curves nor the tube's scales account for. */
function screenOnly({ tube, predicted }: Doubt, idle: TubeIdle): number {
  const byScales = scaleUncertainty(tube, loggedPoint(tube.parameters, idle).screenSlopes)
  return Math.sqrt(Math.max(0, predicted.screen.share ** 2 - predicted.curveShare ** 2 - byScales ** 2))
}

function moved(stage: OutputStage, solution: IdleSolution, doubt: Doubt, index: number): Result<Moved, SolveFault> {
  const byScale: Pair[] = []
  for (let scale = 0; scale < SCALES; scale++) {
    const pair = pairBy(stage, index, scale, solution)
    if (!pair.ok) return pair
    byScale.push(pair.value)
  }
  const idle = solution.tubes[index]
  if (!idle) throw new Error(`No tube ${index} in the solution`)
  const screenPerCathode = idle.cathodeCurrent > 0 ? idle.screenCurrent / idle.cathodeCurrent : 0
  return ok({ ...doubt, byScale, screenPerCathode, screenOnly: screenOnly(doubt, idle) })
}

function apart({ up, down }: Pair, at: number, key: BandedKey): number {
  const [above, below] = [up.tubes[at], down.tubes[at]]
  if (!above || !below) throw new Error(`No tube ${at} in the solution`)
  return measure(above, key) - measure(below, key)
}

function slopesOf({ byScale }: Moved, at: number, key: BandedKey): LogScales {
  const [p, mu, r] = byScale.map((pair) => apart(pair, at, key) / (2 * NUDGE))
  return [p ?? 0, mu ?? 0, r ?? 0]
}

type AllMoved = { readonly tubes: readonly Moved[]; readonly parts: readonly Pair[] }

function deviation({ tubes, parts }: AllMoved, at: number, key: BandedKey): number {
  const shared = new Map<string, number>()
  const addShared = (name: string, term: number) => shared.set(name, (shared.get(name) ?? 0) + term)
  let own = 0
  for (const part of parts) own += (apart(part, at, key) / (2 * PART_STEP)) ** 2
  for (const one of tubes) {
    const { tube, predicted, screenPerCathode } = one
    const slopes = slopesOf(one, at, key)
    const { curvesOf } = tube.type
    addShared(`curves of ${curvesOf}`, slopes[0] * Math.min(predicted.curveShare, WIDEST))
    addShared(`screens of ${curvesOf}`, (slopes[2] + screenPerCathode * slopes[0]) * one.screenOnly)
    own += scaleUncertainty(tube, slopes) ** 2
  }
  return Math.sqrt([...shared.values()].reduce((sum, term) => sum + term * term, own))
}

function band(value: number, key: BandedKey, standard: number): Band {
  if (!isLogged(key)) return { value, low: value - COVERAGE * standard, high: value + COVERAGE * standard }
  const factor = Math.exp(COVERAGE * Math.min(standard, WIDEST))
  return { value, low: value / factor, high: value * factor }
}

const tubeBands = (all: AllMoved, idle: TubeIdle, at: number): TubeBands =>
  Object.fromEntries(
    [...LOGGED, ...PLAIN].map((key) => [key, band(amountOf(idle, key), key, deviation(all, at, key))]),
  ) as TubeBands

/** `doubts` in the order of the stage's tubes. */
export function circuitBands(
  stage: OutputStage,
  solution: IdleSolution,
  doubts: readonly Doubt[],
  partDoubts: readonly PartDoubt[] = [],
): Result<readonly TubeBands[], SolveFault> {
  const tubes: Moved[] = []
  for (const [index, doubt] of doubts.entries()) {
    const one = moved(stage, solution, doubt, index)
    if (!one.ok) return one
    tubes.push(one.value)
  }
  const parts: Pair[] = []
  for (const doubt of partDoubts) {
    const one = movedPart(doubt, solution)
    if (!one.ok) return one
    parts.push(one.value)
  }
  return ok(solution.tubes.map((idle, at) => tubeBands({ tubes, parts }, idle, at)))
}
