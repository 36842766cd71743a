/**
 * What the spread of a set counts, in whole points: one yardstick is a million.
 *
 *   x part = floor(weight · (max x − min x) / yardstick)
 *   y part = floor(weight · (max y / min y − 1) / yardstick)
 *
 * The ratio is taken against the weakest tube of the set, not the mean: max/min can only
 * grow when a tube is added, so a set never counts less than any part of it, which the
 * mean does not promise. It is also the stricter reading: within 10 % of the weakest is
 * within 10 % of the mean. Each part is rounded down to a point; rounding keeps the order,
 * and sums of whole numbers make ties exact on every machine.
 *
 * Exact while xRange · xWeight and yRange · yWeight · 10⁷ stay below 2⁵³: up to 900 mA/V
 * apart at weight 1.
 */
export const POINTS_PER_YARDSTICK = 1_000_000

export type SpreadScale = {
  /** Units of x (µA) in one yardstick, whole. */
  readonly xYard: number
  /** Ten-thousandths in one yardstick of y, whole: 10 % is 1000. */
  readonly yYard: number
  /** Thousandths, whole, not negative: 1000 is weight one. One of the two is above zero. */
  readonly xWeight: number
  readonly yWeight: number
}

const X_POINTS = POINTS_PER_YARDSTICK / 1000
const Y_POINTS = X_POINTS * 10_000

export const xSpread = ({ xYard, xWeight }: SpreadScale, range: number): number =>
  Math.floor((range * xWeight * X_POINTS) / xYard)

export const ySpread = ({ yYard, yWeight }: SpreadScale, lowest: number, highest: number): number =>
  Math.floor(((highest - lowest) * yWeight * Y_POINTS) / (lowest * yYard))

export const spreadCost = (scale: SpreadScale, xRange: number, yLowest: number, yHighest: number): number =>
  xSpread(scale, xRange) + ySpread(scale, yLowest, yHighest)

/** No wider range of x counts as few points as these. */
export const widestX = ({ xYard, xWeight }: SpreadScale, points: number): number =>
  xWeight === 0 ? Number.POSITIVE_INFINITY : ((points + 1) * xYard) / (xWeight * X_POINTS)

/** No higher max y / min y − 1 counts as few points as these. */
export const widestY = ({ yYard, yWeight }: SpreadScale, points: number): number =>
  yWeight === 0 ? Number.POSITIVE_INFINITY : ((points + 1) * yYard) / (yWeight * Y_POINTS)

export function assertScale(scale: SpreadScale): void {
  const { xYard, yYard, xWeight, yWeight } = scale
  const sound = [xYard, yYard, xWeight, yWeight].every((each) => Number.isInteger(each) && each >= 0)
  if (!sound || xYard < 1 || yYard < 1) throw new Error(`Yardsticks and weights: ${JSON.stringify(scale)}`)
  if (xWeight + yWeight === 0) throw new Error('One of the two spreads must have a weight above zero')
}
