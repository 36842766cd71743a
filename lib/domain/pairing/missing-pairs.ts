/**
 * Permitted pairs that the duals undercharge, over the complete graph:
 *
 *   excess = u(v) + u(w) - (z of blossoms holding both) - 2 * distance > 0
 *
 * Whole halves of the plane are left out where even their highest u, nearest
 * corner and least common z leave no excess.
 */
import type { EdgeList } from './blossom/neighbours'
import type { Certificate } from './certificate'
import { CommonDuals } from './common-duals'
import type { KdTree } from './kd-tree'
import { distanceIn, type Plane, permittedIn } from './plane'

/** Worst ones kept for a point and round; the others come up again if they still matter. */
const KEPT = 6

export function missingPairs(plane: Plane, tree: KdTree, certificate: Certificate): EdgeList {
  const search = new ExcessSearch(plane, tree, certificate)
  const edges = { from: [] as number[], to: [] as number[] }
  for (let place = 0; place < tree.order.length; place += 1) {
    for (const other of search.after(place)) {
      edges.from.push(tree.order[place] as number)
      edges.to.push(other)
    }
  }
  return edges
}

class ExcessSearch {
  private readonly common: CommonDuals
  private readonly highest: Float64Array
  private readonly lowestPlace: Int32Array
  private readonly highestPlace: Int32Array
  private readonly stack: number[] = []

  constructor(
    private readonly plane: Plane,
    private readonly tree: KdTree,
    private readonly certificate: Certificate,
  ) {
    this.common = new CommonDuals(certificate)
    this.highest = new Float64Array(tree.nodes)
    this.lowestPlace = new Int32Array(tree.nodes)
    this.highestPlace = new Int32Array(tree.nodes)
    for (let node = tree.nodes - 1; node >= 0; node -= 1) this.summarise(node)
  }

  private summarise(node: number): void {
    const { tree, highest, lowestPlace, highestPlace } = this
    if (!tree.isLeaf(node)) {
      const [left, right] = [2 * node + 1, 2 * node + 2]
      highest[node] = Math.max(highest[left] as number, highest[right] as number)
      lowestPlace[node] = Math.min(lowestPlace[left] as number, lowestPlace[right] as number)
      highestPlace[node] = Math.max(highestPlace[left] as number, highestPlace[right] as number)
      return
    }
    const points = tree.order.subarray(tree.first[node], tree.end[node])
    const places = points.map((point) => this.common.place[point] as number)
    highest[node] = points.reduce(
      (most, point) => Math.max(most, this.certificate.pointDuals[point] as number),
      Number.NEGATIVE_INFINITY,
    )
    lowestPlace[node] = places.reduce((a, b) => Math.min(a, b), 2 ** 30)
    highestPlace[node] = places.reduce((a, b) => Math.max(a, b), 0)
  }

  /** Points after this one in the tree's order, so that no pair comes twice. */
  after(place: number): readonly number[] {
    const { tree, stack } = this
    const point = tree.order[place] as number
    const dual = this.certificate.pointDuals[point] as number
    const found: { other: number; excess: number }[] = []
    stack.push(0)
    for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
      if ((tree.end[node] as number) <= place + 1 || !this.mayExceed(node, point, dual)) continue
      if (!tree.isLeaf(node)) {
        stack.push(2 * node + 2, 2 * node + 1)
        continue
      }
      const from = Math.max(place + 1, tree.first[node] as number)
      for (let at = from; at < (tree.end[node] as number); at += 1) {
        const other = tree.order[at] as number
        const excess = this.excess(point, other)
        if (excess > 0) found.push({ other, excess })
      }
    }
    if (found.length > KEPT) found.sort((a, b) => b.excess - a.excess || a.other - b.other)
    return found.slice(0, KEPT).map(({ other }) => other)
  }

  private mayExceed(node: number, point: number, dual: number): boolean {
    const distance = this.tree.distanceTo(node, point)
    const room = dual + (this.highest[node] as number) - 2 * distance
    if (room <= 0) return false
    const place = this.common.place[point] as number
    const low = Math.min(place, this.lowestPlace[node] as number)
    const high = Math.max(place, this.highestPlace[node] as number)
    return low === high || room > this.common.least(low, high)
  }

  private excess(point: number, other: number): number {
    const { plane, common, certificate } = this
    const { pointDuals } = certificate
    const bare = (pointDuals[point] as number) + (pointDuals[other] as number) - 2 * distanceIn(plane, point, other)
    if (bare <= 0 || !permittedIn(plane, point, other)) return 0
    const [a, b] = [common.place[point] as number, common.place[other] as number]
    return bare - common.least(Math.min(a, b), Math.max(a, b))
  }
}
