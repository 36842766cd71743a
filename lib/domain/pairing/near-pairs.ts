/**
 * The pairs a pairing starts from: each place of the plane with the places
 * nearest to it.
 *
 * Tubes are read to a tenth of a milliampere or so, and many stand at the
 * very same place. Those are chained at distance 0, and only the first few
 * stand for the place towards others; which of them is left over does not
 * matter to the sum. What this leaves out, `missingPairs` finds.
 */
import type { EdgeList } from './blossom/neighbours'
import { KdTree } from './kd-tree'
import { distanceIn, type Plane, permittedIn } from './plane'

/** Points that stand for a place. */
const SPEAKERS = 2

export function nearPairs(plane: Plane, neighbours: number): EdgeList {
  const places = placesOf(plane)
  const edges = { from: [] as number[], to: [] as number[] }
  for (const points of places) chain(points, edges)
  const heads: Plane = {
    ...plane,
    x: Int32Array.from(places, ([head]) => plane.x[head as number] as number),
    y: Int32Array.from(places, ([head]) => plane.y[head as number] as number),
  }
  const search = new NearestSearch(heads, neighbours)
  const found = places.map((_, place) => search.of(place))
  found.forEach((near, place) => {
    for (const other of near) {
      if (other < place && found[other]?.includes(place)) continue
      join(places[place] as number[], places[other] as number[], edges)
    }
  })
  return edges
}

type Edges = { readonly from: number[]; readonly to: number[] }

function placesOf({ x, y }: Plane): number[][] {
  const places = new Map<string, number[]>()
  for (let point = 0; point < x.length; point += 1) {
    const key = `${x[point]}/${y[point]}`
    const place = places.get(key)
    if (place) place.push(point)
    else places.set(key, [point])
  }
  return [...places.values()]
}

function chain(points: readonly number[], { from, to }: Edges): void {
  for (let place = 1; place < points.length; place += 1) {
    for (let back = 1; back <= Math.min(SPEAKERS, place); back += 1) {
      from.push(points[place - back] as number)
      to.push(points[place] as number)
    }
  }
}

function join(a: readonly number[], b: readonly number[], { from, to }: Edges): void {
  for (const left of a.slice(0, SPEAKERS)) {
    for (const right of b.slice(0, SPEAKERS)) {
      from.push(left)
      to.push(right)
    }
  }
}

class NearestSearch {
  private readonly tree: KdTree
  private readonly stack: number[] = []
  private distances: number[] = []
  private points: number[] = []

  constructor(
    private readonly plane: Plane,
    private readonly wanted: number,
  ) {
    this.tree = new KdTree(plane)
  }

  /** Nearest first; fewer where the widths permit fewer. */
  of(point: number): readonly number[] {
    const { tree, stack } = this
    this.distances = []
    this.points = []
    stack.push(0)
    for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
      if (tree.distanceTo(node, point) >= this.reach()) continue
      if (tree.isLeaf(node)) this.offerAll(node, point)
      else this.descend(node, point)
    }
    return this.points
  }

  /** Only nearer points than this are of use. */
  private reach(): number {
    const full = this.points.length >= this.wanted
    return full ? (this.distances[this.wanted - 1] as number) : Number.POSITIVE_INFINITY
  }

  private descend(node: number, point: number): void {
    const { tree, stack } = this
    const [left, right] = [2 * node + 1, 2 * node + 2]
    const leftFirst = tree.distanceTo(left, point) <= tree.distanceTo(right, point)
    if (leftFirst) stack.push(right, left)
    else stack.push(left, right)
  }

  private offerAll(node: number, point: number): void {
    const { tree, plane } = this
    for (let place = tree.first[node] as number; place < (tree.end[node] as number); place += 1) {
      const other = tree.order[place] as number
      if (other !== point && permittedIn(plane, point, other)) this.offer(other, distanceIn(plane, point, other))
    }
  }

  private offer(other: number, distance: number): void {
    if (distance >= this.reach()) return
    let place = this.points.length
    while (place > 0 && (this.distances[place - 1] as number) > distance) place -= 1
    this.distances.splice(place, 0, distance)
    this.points.splice(place, 0, other)
    if (this.points.length > this.wanted) {
      this.points.pop()
      this.distances.pop()
    }
  }
}
