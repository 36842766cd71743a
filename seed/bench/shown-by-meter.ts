/** What a meter's display shows of a voltage: the lowest range it fits in (its counts × 10ⁿ, at most 1000 V), rounded to the last digit. */
const HIGHEST_RANGE = 1000

export function shownByMeter(value: number, displayCounts: number): number {
  const size = Math.abs(value)
  let digit = 10 ** Math.ceil(Math.log10(0.1 / displayCounts))
  while (size > digit * (displayCounts - 1) && digit * displayCounts < HIGHEST_RANGE) digit *= 10
  return Number((Math.round(value / digit) * digit).toPrecision(6))
}
