/**
 * Sum of the duals of the blossoms that hold two points, by their places in
 * the layout. Each blossom is a stretch of it, so between two neighbouring
 * places stands the sum for the blossoms that reach over both, and for any two
 * places it is the least of those in between. Kept as a tree of halves.
 */
import type { Certificate } from '../certificate'
import type { NestedBlossoms } from './nested-blossoms'

export class SharedDuals {
  /** The least over stretches: leaves from `offset` on, each entry the lesser of the two below it. */
  private readonly tree: Float64Array
  private readonly offset: number

  constructor({ pointDuals, blossomDuals }: Certificate, nested: NestedBlossoms) {
    const points = pointDuals.length
    let offset = 1
    while (offset < points) offset *= 2
    this.offset = offset
    this.tree = new Float64Array(2 * offset).fill(Number.POSITIVE_INFINITY)
    // A blossom adds its dual from its first gap on and takes it back after its last.
    const steps = new Float64Array(points + 1)
    nested.sizes.forEach((size, blossom) => {
      const first = nested.places[points + blossom] as number
      steps[first] = (steps[first] as number) + (blossomDuals[blossom] as number)
      const after = first + size - 1
      steps[after] = (steps[after] as number) - (blossomDuals[blossom] as number)
    })
    let sum = 0
    for (let gap = 0; gap < points - 1; gap += 1) {
      sum += steps[gap] as number
      this.tree[offset + gap] = sum
    }
    for (let entry = offset - 1; entry > 0; entry -= 1) {
      this.tree[entry] = Math.min(this.tree[2 * entry] as number, this.tree[2 * entry + 1] as number)
    }
  }

  /** Infinity for one and the same place: no pair. */
  of(place: number, other: number): number {
    let low = this.offset + Math.min(place, other)
    let high = this.offset + Math.max(place, other)
    let least = Number.POSITIVE_INFINITY
    for (; low < high; low >>= 1, high >>= 1) {
      if (low & 1) least = Math.min(least, this.tree[low++] as number)
      if (high & 1) least = Math.min(least, this.tree[--high] as number)
    }
    return least
  }
}
