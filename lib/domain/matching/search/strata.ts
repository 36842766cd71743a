/**
 * Where the tubes of an index are cut into strata by cost.
 *
 * A tube that costs c above the cheapest leaves the spread of its set and the others no more than
 * slack − c, the slack being what the best set counts above as many of the cheapest. So strata are
 * cut about where a tube costs its share of the slack and more; what costs more than all of it is
 * never looked at.
 *
 * The slack is not known before the best set is, so it is guessed. Of m tubes spread evenly over
 * an area A, in points, about
 *
 *   m · (m L² / A)^(k − 1) / (k − 1)!
 *
 * sets of k lie within a square of side L. It is one for L² = (A / m) · ((k − 1)! / m)^(1 / (k − 1)):
 * about so close is the closest. The guess is the least of spread and costs over the cheapest 16,
 * 32, 64 … of a sample. Far off, it makes the search slower; what is found stays the same.
 */
import type { Running } from './running'
import { type SpreadScale, xSpread, ySpread } from './spread-cost'

/** Shares of the slack. */
const CUTS = [0.75, 1.25, 2, 4]
/** Of the tubes, where they cost more than that: the slack may have been guessed far too low. */
const PARTS = [1 / 64, 1 / 16, 1 / 8, 1 / 4, 1 / 2]
const SAMPLE = 4096
const SMALLEST_SHARE = 16

export type StrataTerms = { readonly count: number; readonly scale: SpreadScale }

/** Lowest cost of each stratum but the first; rising, no two alike. `aside`: 1 for a tube that does not count. */
export function costEdges(index: Running, terms: StrataTerms, isAside: (tube: number) => boolean): number[] {
  const sample = sampled(index, isAside)
  const [least] = sample.cost
  if (least === undefined) return []
  const slack = slackOf(sample, terms)
  const cuts = CUTS.map((cut) => Math.ceil(least + (cut * slack) / terms.count))
  const parts = PARTS.map((part) => sample.cost[Math.floor(part * sample.cost.length)] as number)
  const edges: number[] = []
  for (const edge of [...cuts, ...parts]) {
    if (edge > (edges.at(-1) ?? least) && edge <= (sample.cost.at(-1) as number)) edges.push(edge)
  }
  return edges
}

type Sample = {
  /** Each rising. */
  readonly cost: Float64Array
  readonly x: Int32Array
  readonly y: Int32Array
  /** Tubes that it stands for. */
  readonly of: number
}

function sampled({ size, cost, x, y }: Running, isAside: (tube: number) => boolean): Sample {
  const step = Math.max(1, Math.floor(size / SAMPLE))
  const numbers: number[] = []
  for (let tube = 0; tube < size; tube += step) if (!isAside(tube)) numbers.push(tube)
  const at = Int32Array.from(numbers)
  return {
    cost: new Float64Array(at.length).map((_, nth) => cost[at[nth] as number] as number).sort(),
    x: at.map((tube) => x[tube] as number).sort(),
    y: at.map((tube) => y[tube] as number).sort(),
    of: at.length * step,
  }
}

/** Points that the best set may count above as many of the cheapest. */
function slackOf(sample: Sample, { count, scale }: StrataTerms): number {
  const { cost, of } = sample
  const across = xSpread(
    scale,
    middleHalf(sample.x, (low, high) => high - low),
  )
  const up = middleHalf(sample.y, (low, high) => ySpread(scale, low, high))
  let [least, sum, taken] = [Number.POSITIVE_INFINITY, 0, 0]
  for (let size = Math.min(SMALLEST_SHARE, cost.length); ; size = Math.min(2 * size, cost.length)) {
    for (; taken < size; taken += 1) sum += cost[taken] as number
    const above = count * (sum / size - (cost[0] as number))
    // Twice: the middle half of either.
    const spread = likelySpread([2 * across, 2 * up], (of * size) / cost.length, count)
    least = Math.min(least, above + spread)
    if (size === cost.length) return least
  }
}

function middleHalf(rising: Int32Array, between: (low: number, high: number) => number): number {
  const at = (part: number) => rising[Math.floor(part * (rising.length - 1))] as number
  return between(at(0.25), at(0.75))
}

/** Of the closest so many of m tubes, spread evenly over a width and a height in points. */
function likelySpread([width, height]: readonly [number, number], m: number, count: number): number {
  const crowding = (factorial(count - 1) / m) ** (1 / (count - 1)) / m
  const side = Math.sqrt(width * height * crowding)
  const narrow = Math.min(width, height)
  // Narrower than the square: they stand in a row.
  return side <= narrow ? 2 * side : Math.max(width, height) * crowding + narrow
}

const factorial = (n: number): number => (n <= 1 ? 1 : n * factorial(n - 1))
