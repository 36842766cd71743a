/**
 * How far apart tubes are, as a whole number of steps, 100 000 to a yardstick.
 *
 *   x = 100 000 * plate current / current yardstick
 *   y = 100 000 * weight * ln(gm) / ln(1 + transconductance yardstick)
 *   spread of a set = (max x - min x) + (max y - min y)
 *
 * The logarithm makes "highest over lowest, less one" a plain difference: 10 %
 * apart is one yardstick of 10 % wherever it lies. A set matches when both
 * differences are within one yardstick. Coordinates are rounded to whole
 * steps, so sums are exact and ties are ties. At yardsticks of 5 mA and 10 %
 * that is so much finer than 1 µA and 1 µS that, up to 50 mA/V, it matches
 * exactly what the choice of a set calls a match.
 *
 * Tubes without transconductance are compared by current alone, and only
 * among themselves.
 */
import type { Yardsticks } from '../matching/candidate'
import { TRANSCONDUCTANCE_WEIGHT, USUAL_YARDSTICKS } from '../matching/match-limits'
import type { Amps, Siemens } from '../units'

/** Steps in one yardstick. */
export const YARDSTICK_STEPS = 100_000

/** Rounding may push a difference of exactly one yardstick of transconductance over by a step. */
const ROUNDING = 1

export type SpreadRule = {
  readonly yardsticks: Yardsticks
  /** What one yardstick of transconductance counts against one of plate current. */
  readonly transconductanceWeight: number
  /**
   * Steps charged for a tube left single. 'most-sets': so many that one set more is worth any
   * spread. At one yardstick, any pair within the yardsticks is worth making by itself.
   */
  readonly singleCost: number | 'most-sets'
}

export const USUAL_SPREAD_RULE: SpreadRule = {
  yardsticks: USUAL_YARDSTICKS,
  transconductanceWeight: TRANSCONDUCTANCE_WEIGHT,
  singleCost: YARDSTICK_STEPS,
}

export type ReadTube = {
  readonly mark: string
  readonly plateCurrent: Amps
  /** On all tubes or on none. */
  readonly transconductance: Siemens | null
}

export type Widths = { readonly x: number; readonly y: number }

export function widthsOf({ transconductanceWeight }: SpreadRule): Widths {
  return { x: YARDSTICK_STEPS, y: Math.round(YARDSTICK_STEPS * transconductanceWeight) + ROUNDING }
}

/** Steps of plate current and of transconductance, measured from no fixed zero. */
export function stepsOf({ plateCurrent, transconductance }: ReadTube, rule: SpreadRule): readonly [number, number] {
  const { yardsticks, transconductanceWeight } = rule
  const x = Math.round((YARDSTICK_STEPS * microsOf(plateCurrent)) / microsOf(yardsticks.plateCurrent))
  if (transconductance === null) return [bounded(x), 0]
  const perYardstick = Math.log(1 + yardsticks.transconductance)
  const yardsticksUp = Math.log(Math.max(1, microsOf(transconductance))) / perYardstick
  return [bounded(x), bounded(Math.round(YARDSTICK_STEPS * transconductanceWeight * yardsticksUp))]
}

/** Steps a single is charged in a stock of `count` tubes, in sets of `size`. */
export function singleCostOf(rule: SpreadRule, count: number, size: number): number {
  if (rule.singleCost !== 'most-sets') return rule.singleCost
  const widest = widthsOf(rule).x + widthsOf(rule).y
  // One set more leaves `size` fewer single; all sets together spread no more than this.
  return Math.ceil((Math.floor(count / size) * widest + 1) / size)
}

const microsOf = (value: number): number => Math.round(value * 1e6)

function bounded(steps: number): number {
  if (Math.abs(steps) > 2 ** 30) throw new Error(`${steps} steps: the yardstick is too small for the reading`)
  return steps
}
