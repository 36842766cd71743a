/**
 * Which tubes of a push-pull set go on which side, so that the sums of plate
 * current on both sides are as close as they can be. Every even split is
 * looked at: 1, 3, 10, 35 of them for 2, 4, 6, 8 tubes. Between equal splits
 * side A takes the earlier marks; the first mark is always on side A.
 *
 * Plate currents are those of the test point, not of the amplifier.
 */
export type Split = {
  /** Places in the list given, rising. */
  readonly sideA: readonly number[]
  readonly sideB: readonly number[]
  readonly sumA: number
  readonly sumB: number
}

/** `microamps` in natural order of marks. null for an odd number. */
export function evenSplit(microamps: readonly number[]): Split | null {
  const count = microamps.length
  if (count === 0 || count % 2 !== 0) return null
  const total = sumAt(microamps, [...microamps.keys()])
  let best: Split | null = null
  for (const rest of choices(1, count, count / 2 - 1)) {
    const sideA = [0, ...rest]
    const sumA = sumAt(microamps, sideA)
    const split = { sideA, sideB: without(count, sideA), sumA, sumB: total - sumA }
    if (!best || difference(split) < difference(best)) best = split
  }
  return best
}

export const difference = ({ sumA, sumB }: Split): number => Math.abs(sumA - sumB)

/** All ways to take `size` of the whole numbers from `from` up to `end`, in dictionary order. */
function choices(from: number, end: number, size: number): number[][] {
  if (size === 0) return [[]]
  const all: number[][] = []
  for (let first = from; first <= end - size; first += 1) {
    for (const rest of choices(first + 1, end, size - 1)) all.push([first, ...rest])
  }
  return all
}

const sumAt = (values: readonly number[], places: readonly number[]): number =>
  places.reduce((total, place) => total + (values[place] as number), 0)

const without = (count: number, taken: readonly number[]): number[] =>
  Array.from({ length: count }, (_, place) => place).filter((place) => !taken.includes(place))
