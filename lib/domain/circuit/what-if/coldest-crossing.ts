/**
 * The coldest setting at which a quantity reaches its target.
 *
 * Settings run from `cold` to `hot`. They are walked in even steps until the target is
 * passed, then the step is closed in on by regula falsi with halved ends (the Illinois
 * method; Dowell and Jarratt, BIT 11, 1971). Plate dissipation may fall again when a
 * soft supply gives way: the walk takes the first crossing, the one on the cold side.
 */
import { fail, ok, type Result } from '@/lib/domain/result'

const WALK_STEPS = 40
const MOST_CLOSINGS = 100
/** Of the walk's whole length. */
const CLOSE = 1e-12

/** The highest value met on the way, when the target was not. */
export type OutOfReach = { readonly code: 'out-of-reach'; readonly most: number }

type Measure<F> = (setting: number) => Result<number, F>
/** `excess`: value less target. */
type End = { setting: number; excess: number }

function closeIn<F>(measure: Measure<F>, target: number, low: End, high: End, close: number): Result<number, F> {
  let side = 0
  for (let count = 0; count < MOST_CLOSINGS && high.setting - low.setting > close; count++) {
    const setting = low.setting + ((high.setting - low.setting) * low.excess) / (low.excess - high.excess)
    const value = measure(setting)
    if (!value.ok) return value
    const excess = value.value - target
    if (excess === 0) return ok(setting)
    if (excess < 0) {
      low.setting = setting
      low.excess = excess
      if (side === -1) high.excess /= 2
      side = -1
    } else {
      high.setting = setting
      high.excess = excess
      if (side === 1) low.excess /= 2
      side = 1
    }
    if (Math.abs(excess) <= 1e-13 * Math.abs(target)) return ok(setting)
  }
  return ok(high.setting)
}

/** `cold` below `hot`. A target already passed at `cold` gives `cold`. */
export function coldestCrossing<F>(
  measure: Measure<F>,
  target: number,
  cold: number,
  hot: number,
): Result<number, F | OutOfReach> {
  let last: End | null = null
  let most = Number.NEGATIVE_INFINITY
  for (let step = 0; step <= WALK_STEPS; step++) {
    const setting = cold + ((hot - cold) * step) / WALK_STEPS
    const value = measure(setting)
    if (!value.ok) return value
    most = Math.max(most, value.value)
    const here = { setting, excess: value.value - target }
    if (here.excess >= 0)
      return last === null ? ok(setting) : closeIn(measure, target, last, here, CLOSE * (hot - cold))
    last = here
  }
  return fail({ code: 'out-of-reach', most })
}
