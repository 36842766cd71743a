/**
 * Points of a plane, halved again and again across their longer side, with
 * the box of each half. Equal points are no trouble: halves are by count.
 * The halves of node i are 2i + 1 and 2i + 2; every node of a level holds as
 * many points as another, give or take one.
 */
import type { Plane } from './plane'

const LEAF = 8
/** Beyond every coordinate. */
const FAR = 2 ** 31 - 1

export class KdTree {
  /** The points, so that those of each node stand together. */
  readonly order: Int32Array
  readonly first: Int32Array
  /** Exclusive. */
  readonly end: Int32Array
  readonly nodes: number
  private readonly boxes: Int32Array
  /** Nodes from here on are not halved. */
  private readonly leaves: number

  constructor(private readonly plane: Plane) {
    const count = plane.x.length
    this.order = Int32Array.from({ length: count }, (_, point) => point)
    let leaves = 1
    while (count / leaves > LEAF) leaves *= 2
    this.leaves = leaves - 1
    this.nodes = 2 * leaves - 1
    this.first = new Int32Array(this.nodes)
    this.end = new Int32Array(this.nodes)
    this.boxes = new Int32Array(4 * this.nodes)
    this.end[0] = count
    for (let node = 0; node < this.nodes; node += 1) this.fill(node)
  }

  isLeaf(node: number): boolean {
    return node >= this.leaves
  }

  private fill(node: number): void {
    const [first, end] = [this.first[node] as number, this.end[node] as number]
    this.measure(node, first, end)
    if (this.isLeaf(node)) return
    const middle = (first + end) >> 1
    const [left, right] = [2 * node + 1, 2 * node + 2]
    this.select(first, end - 1, middle, this.longerSide(node))
    this.first[left] = first
    this.end[left] = middle
    this.first[right] = middle
    this.end[right] = end
  }

  private measure(node: number, first: number, end: number): void {
    const { x, y } = this.plane
    const box = [FAR, -FAR, FAR, -FAR] as [number, number, number, number]
    for (let place = first; place < end; place += 1) {
      const point = this.order[place] as number
      box[0] = Math.min(box[0], x[point] as number)
      box[1] = Math.max(box[1], x[point] as number)
      box[2] = Math.min(box[2], y[point] as number)
      box[3] = Math.max(box[3], y[point] as number)
    }
    this.boxes.set(box, 4 * node)
  }

  private longerSide(node: number): Int32Array {
    const [west, east, south, north] = this.boxes.subarray(4 * node, 4 * node + 4) as unknown as number[]
    const wide = (east as number) - (west as number) >= (north as number) - (south as number)
    return wide ? this.plane.x : this.plane.y
  }

  /** Puts the point that belongs at `middle` there, lesser ones before it (quickselect, middle pivot). */
  private select(first: number, last: number, middle: number, by: Int32Array): void {
    const { order } = this
    let [low, high] = [first, last]
    while (low < high) {
      const pivot = by[order[(low + high) >> 1] as number] as number
      let [i, j] = [low, high]
      while (i <= j) {
        while ((by[order[i] as number] as number) < pivot) i += 1
        while ((by[order[j] as number] as number) > pivot) j -= 1
        if (i > j) break
        const kept = order[i] as number
        order[i] = order[j] as number
        order[j] = kept
        i += 1
        j -= 1
      }
      if (middle <= j) high = j
      else if (middle >= i) low = i
      else return
    }
  }

  /** How far the point is from the node's box at least; Infinity when no point of it may be paired with this one. */
  distanceTo(node: number, point: number): number {
    const { x, y, widthX, widthY } = this.plane
    const { boxes } = this
    const [px, py] = [x[point] as number, y[point] as number]
    const dx = Math.max((boxes[4 * node] as number) - px, px - (boxes[4 * node + 1] as number), 0)
    if (dx > widthX) return Number.POSITIVE_INFINITY
    const dy = Math.max((boxes[4 * node + 2] as number) - py, py - (boxes[4 * node + 3] as number), 0)
    return dy > widthY ? Number.POSITIVE_INFINITY : dx + dy
  }
}
