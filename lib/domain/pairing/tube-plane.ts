/** A stock of tubes in the plane of spreads. Points stand in the natural order of marks. */
import { naturalOrder } from '../matching/natural-order'
import { fail, ok, type Result } from '../result'
import type { Plane } from './plane'
import { type ReadTube, type SpreadRule, singleCostOf, stepsOf, widthsOf } from './spread-rule'

export type StockFault =
  | { readonly kind: 'mark-twice'; readonly mark: string }
  /** The first tube without transconductance among others that have it. */
  | { readonly kind: 'transconductance-missing'; readonly mark: string }

export type TubePlane<T extends ReadTube> = {
  readonly tubes: readonly T[]
  readonly plane: Plane
}

/** `size`: tubes in a set. */
export function tubePlane<T extends ReadTube>(
  stock: readonly T[],
  rule: SpreadRule,
  size: number,
): Result<TubePlane<T>, StockFault> {
  const tubes = [...stock].sort((a, b) => naturalOrder(a.mark, b.mark))
  const twice = tubes.find(({ mark }, place) => mark === tubes[place + 1]?.mark)
  if (twice) return fail({ kind: 'mark-twice', mark: twice.mark })
  const missing = tubes.find(({ transconductance }) => transconductance === null)
  if (missing && tubes.some(({ transconductance }) => transconductance !== null)) {
    return fail({ kind: 'transconductance-missing', mark: missing.mark })
  }
  const steps = tubes.map((tube) => stepsOf(tube, rule))
  const widths = widthsOf(rule)
  const plane: Plane = {
    x: Int32Array.from(steps, ([x]) => x),
    y: Int32Array.from(steps, ([, y]) => y),
    widthX: widths.x,
    widthY: widths.y,
    singleCost: singleCostOf(rule, tubes.length, size),
  }
  return ok({ tubes, plane })
}
