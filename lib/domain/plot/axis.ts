/**
 * A scale with round ticks: steps of 1, 2 or 5 times a power of ten, as on printed
 * curve sheets. It begins and ends on a tick.
 */
export type Axis = {
  readonly from: number
  readonly to: number
  readonly step: number
  /** Rising, both ends included. */
  readonly ticks: readonly number[]
  /** Fine rulings between one tick and the next: 10 where a tenth of the step is round to read, else 5 or 4. */
  readonly fine: number
}

/** Smallest of 1, 2, 5 × 10ⁿ that is not below `least`, which is above zero. */
export function roundStep(least: number): number {
  if (!(least > 0) || !Number.isFinite(least)) throw new Error(`A step must be above zero, got ${least}`)
  const decade = 10 ** Math.floor(Math.log10(least))
  const leading = [1, 2, 5, 10].find((one) => one * decade >= least * (1 - 1e-9)) ?? 10
  return tidy(leading * decade)
}

/** 0.30000000000000004 is 0.3. */
const tidy = (value: number): number => Number(value.toPrecision(12))

const ticksBetween = (first: number, last: number, step: number): number[] =>
  Array.from({ length: last - first + 1 }, (_, i) => tidy((first + i) * step))

/** 2 divides by 4 into round halves, 5 by 5 into ones, 1 by 10 into tenths. */
const fineOf = (step: number): number => {
  const leading = Math.round(step / 10 ** Math.floor(Math.log10(step) + 1e-9))
  return leading === 2 ? 4 : leading === 5 ? 5 : 10
}

/** The least axis with round ends that holds `low` … `high`, of about `most` steps at the most. */
export function axisAround(low: number, high: number, most: number): Axis {
  if (!(high > low)) throw new Error(`An axis must rise, got ${low} to ${high}`)
  const step = roundStep((high - low) / most)
  const [first, last] = [Math.floor(low / step + 1e-9), Math.ceil(high / step - 1e-9)]
  const ticks = ticksBetween(first, last, step)
  return { from: ticks[0] ?? low, to: ticks.at(-1) ?? high, step, ticks, fine: fineOf(step) }
}

export const axisFromZero = (reach: number, most: number): Axis => axisAround(0, reach, most)

/** 0 at the lower end, 1 at the upper one; beyond for what lies outside. */
export const shareOf = ({ from, to }: Axis, value: number): number => (value - from) / (to - from)
