/**
 * The sum of the duals of all blossoms that hold two points, for any two.
 *
 * Points are put in the order of a walk through the nested blossoms. Between
 * two neighbours of that order stands the sum for the blossoms holding both;
 * for any two points it is the least that stands between them, as for any
 * range of points it is a lower bound on every pair in it.
 */
import type { Certificate } from './certificate'

export class CommonDuals {
  /** Place of each point in the walk. */
  readonly place: Int32Array
  /** levels[k][i]: the least of the 2^k gaps from i on. */
  private readonly levels: Float64Array[] = []

  constructor(certificate: Certificate) {
    const { order, gaps } = walk(certificate)
    this.place = new Int32Array(order.length)
    order.forEach((point, place) => {
      this.place[point] = place
    })
    let level = gaps
    this.levels.push(level)
    for (let span = 1; 2 * span <= gaps.length; span *= 2) {
      const below = level
      level = Float64Array.from({ length: below.length - span }, (_, i) =>
        Math.min(below[i] as number, below[i + span] as number),
      )
      this.levels.push(level)
    }
  }

  /** Over the pairs of points with places from `low` to `high`, which differ. */
  least(low: number, high: number): number {
    const log = 31 - Math.clz32(high - low)
    const level = this.levels[log] as Float64Array
    return Math.min(level[low] as number, level[high - (1 << log)] as number)
  }
}

type Walk = { readonly order: readonly number[]; readonly gaps: Float64Array }

function walk({ pointDuals, blossomDuals, around }: Certificate): Walk {
  const count = pointDuals.length
  const members: number[][] = Array.from(blossomDuals, () => [])
  const stack: number[] = []
  for (let node = around.length - 1; node >= 0; node -= 1) {
    const outside = around[node] as number
    if (outside < 0) stack.push(node)
    else members[outside]?.push(node)
  }
  const sums = sumsDownTo(blossomDuals, around, count)
  const order: number[] = []
  const gaps = new Float64Array(Math.max(0, count - 1))
  // Least sum met since the last point: that of the innermost blossom around both neighbours.
  let least = 0
  for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
    const outside = around[node] as number
    least = Math.min(least, outside < 0 ? 0 : (sums[outside] as number))
    if (node >= count) {
      stack.push(...(members[node - count] as number[]))
      continue
    }
    if (order.length > 0) gaps[order.length - 1] = least
    order.push(node)
    least = Number.POSITIVE_INFINITY
  }
  return { order, gaps }
}

/** For each blossom the sum of its dual and those around it. */
function sumsDownTo(blossomDuals: Float64Array, around: Int32Array, count: number): Float64Array {
  const sums = new Float64Array(blossomDuals.length).fill(-1)
  const climb: number[] = []
  for (let blossom = 0; blossom < blossomDuals.length; blossom += 1) {
    let node = blossom
    for (; node >= 0 && sums[node] === -1; node = around[count + node] as number) climb.push(node)
    let sum = node < 0 ? 0 : (sums[node] as number)
    for (let inner = climb.pop(); inner !== undefined; inner = climb.pop()) {
      sum += blossomDuals[inner] as number
      sums[inner] = sum
    }
  }
  return sums
}
