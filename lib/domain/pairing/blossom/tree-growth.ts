/**
 * One step of the primal-dual method: from a free node an alternating tree
 * grows along tight edges, duals moving as it does, until its root can be
 * matched or some point of it can be left single.
 *
 *   minimise  sum of w(e) over pairs + 2 * singleCost * singles     (w: doubled distance)
 *   duals     u(v) <= 2 * singleCost,  z(B) >= 0,
 *             u(v) + u(w) - (z of blossoms holding both) <= w(v, w)
 *
 * Work is confined to the tree. Outer points rise and inner ones fall with
 * time, and every change that is due falls out of one heap:
 *
 *   an edge from outer to unlabelled   grow        at  time + slack
 *   an edge between outer nodes        shrink      at  time + slack / 2
 *   an inner blossom at z = 0          open        at  time + z / 2
 *   an edge to a free or single node   match       at  time + slack
 *   an outer point at 2 * singleCost   leave alone at  time + what is missing
 *
 * The last two end the tree, so the earliest of them known bounds the heap.
 * All times are whole: along tight edges duals share their parity, as weights
 * are even.
 */
import { type BlossomNodes, INNER, NOBODY, NONE, OUTER } from './blossom-nodes'
import { EventHeap } from './event-heap'
import type { Neighbours } from './neighbours'

export class TreeGrowth {
  private readonly heap = new EventHeap()
  /** All that were labelled, some since buried in blossoms. */
  private readonly labelled: number[] = []
  /** Earliest time an unlabelled node is known to be reached. */
  private readonly reach: Float64Array
  private readonly reached: number[] = []
  private readonly seen: Int32Array
  private stamp = 0
  /** When the tree ends, and by which edge; NOBODY as other end: the point stays single. */
  private end = Number.POSITIVE_INFINITY
  private endOwn = NOBODY
  private endOther = NOBODY

  constructor(
    private readonly nodes: BlossomNodes,
    private readonly graph: Neighbours,
    /** Twice the cost of a single. */
    private readonly ceiling: number,
  ) {
    this.reach = new Float64Array(nodes.up.length).fill(Number.POSITIVE_INFINITY)
    this.seen = new Int32Array(nodes.up.length)
  }

  /** Matches the free node, or leaves a point of its tree single. */
  growFrom(root: number): void {
    const { nodes, heap } = this
    nodes.time = 0
    this.end = Number.POSITIVE_INFINITY
    this.makeOuter(root)
    this.scanPoints(root)
    for (let due = heap.nextTime(); due < this.end; due = heap.nextTime()) {
      const [first, edge] = [heap.first(), heap.second()]
      heap.drop()
      nodes.time = due
      if (edge === NOBODY) this.openIfDue(first)
      else this.followEdge(first, edge)
    }
    nodes.time = this.end
    this.augment()
    this.fell()
  }

  private makeOuter(node: number): void {
    this.nodes.label[node] = OUTER
    this.nodes.since[node] = this.nodes.time
    this.labelled.push(node)
  }

  private makeInner(node: number, from: number, at: number): void {
    const { nodes } = this
    nodes.label[node] = INNER
    nodes.since[node] = nodes.time
    nodes.reachedFrom[node] = from
    nodes.reachedAt[node] = at
    this.labelled.push(node)
    if (!nodes.isBlossom(node)) return
    const due = nodes.time + (nodes.z[node] as number) / 2
    if (due < this.end) this.heap.push(due, node, NOBODY)
  }

  private scanPoints(node: number): void {
    const { nodes } = this
    const last = nodes.lastPoint[node] as number
    for (let point = nodes.firstPoint[node] as number; ; point = nodes.nextPoint[point] as number) {
      this.scan(point)
      if (point === last) return
    }
  }

  /** Edges of an outer point. */
  private scan(point: number): void {
    const { nodes, graph } = this
    const own = nodes.top(point)
    const dual = nodes.dual(point, own)
    this.mayEnd(nodes.time + this.ceiling - dual, point, NOBODY)
    const until = graph.start[point + 1] as number
    for (let edge = graph.start[point] as number; edge < until; edge += 1) {
      const other = graph.to[edge] as number
      const top = nodes.top(other)
      if (top === own || nodes.label[top] === INNER) continue
      const slack = (graph.weight[edge] as number) - dual - nodes.dual(other, top)
      if (nodes.label[top] === OUTER) {
        const due = nodes.time + slack / 2
        if (due < this.end) this.heap.push(due, point, edge)
      } else if (nodes.matchOther[top] === NOBODY) this.mayEnd(nodes.time + slack, point, other)
      else this.mayReach(top, nodes.time + slack, point, edge)
    }
  }

  /** The edge leads from the point to another; one of the two is outer, the other in the unlabelled node. */
  private mayReach(node: number, due: number, point: number, edge: number): void {
    if (due >= this.end || due >= (this.reach[node] as number)) return
    if (this.reach[node] === Number.POSITIVE_INFINITY) this.reached.push(node)
    this.reach[node] = due
    this.heap.push(due, point, edge)
  }

  private mayEnd(due: number, own: number, other: number): void {
    if (due >= this.end) return
    this.end = due
    this.endOwn = own
    this.endOther = other
  }

  /** An edge that was to be tight by now; other events may have overtaken it. */
  private followEdge(point: number, edge: number): void {
    const { nodes, graph } = this
    const other = graph.to[edge] as number
    const [own, top] = [nodes.top(point), nodes.top(other)]
    const [label, facing] = [nodes.label[own], nodes.label[top]]
    if (own === top || label === INNER || facing === INNER) return
    if (nodes.dual(point, own) + nodes.dual(other, top) !== graph.weight[edge]) return
    if (facing === NONE) this.grow(point, other, top)
    else if (label === NONE) this.grow(other, point, own)
    else this.shrink(point, other)
  }

  private grow(point: number, other: number, top: number): void {
    const { nodes } = this
    this.makeInner(top, point, other)
    const mate = nodes.top(nodes.matchOther[top] as number)
    this.makeOuter(mate)
    this.scanPoints(mate)
  }

  /** The outer node next above an outer one in the tree, or NOBODY at the root. */
  private above(outer: number): number {
    const { nodes } = this
    const other = nodes.matchOther[outer] as number
    if (other === NOBODY) return NOBODY
    return nodes.top(nodes.reachedFrom[nodes.top(other)] as number)
  }

  private meeting(a: number, b: number): number {
    this.stamp += 1
    let [walker, waiting] = [a, b]
    for (;;) {
      if (walker !== NOBODY) {
        if (this.seen[walker] === this.stamp) return walker
        this.seen[walker] = this.stamp
        walker = this.above(walker)
      }
      ;[walker, waiting] = [waiting, walker]
      if (walker === NOBODY && waiting === NOBODY) throw new Error('Two outer nodes of one tree do not meet')
    }
  }

  private shrink(point: number, other: number): void {
    const { nodes } = this
    const [left, right] = [nodes.top(point), nodes.top(other)]
    const start = this.meeting(left, right)
    const ring: number[] = []
    const inner: number[] = []
    for (let node = left; node !== start; node = this.linkUp(node, ring, inner, true));
    for (let node = right; node !== start; node = this.linkUp(node, ring, inner, false));
    nodes.link(right, left, other, point)
    ring.push(start)
    for (const node of ring) {
      nodes.settle(node)
      this.reach[node] = Number.POSITIVE_INFINITY
    }
    this.makeOuter(nodes.close(start))
    for (const node of inner) this.scanPoints(node)
  }

  /** Links an outer node over its inner one to the outer one above, which is returned; or the other way round. */
  private linkUp(outer: number, ring: number[], inners: number[], upward: boolean): number {
    const { nodes } = this
    const [own, mate] = [nodes.matchOwn[outer] as number, nodes.matchOther[outer] as number]
    const inner = nodes.top(mate)
    const [at, from] = [nodes.reachedAt[inner] as number, nodes.reachedFrom[inner] as number]
    const above = nodes.top(from)
    if (upward) {
      nodes.link(outer, inner, own, mate)
      nodes.link(inner, above, at, from)
    } else {
      nodes.link(above, inner, from, at)
      nodes.link(inner, outer, mate, own)
    }
    ring.push(outer, inner)
    inners.push(inner)
    return above
  }

  private openIfDue(blossom: number): void {
    const { nodes } = this
    if (!nodes.isTop(blossom) || nodes.label[blossom] !== INNER || nodes.blossomDual(blossom) !== 0) return
    const [from, at] = [nodes.reachedFrom[blossom] as number, nodes.reachedAt[blossom] as number]
    const base = nodes.memberWith(blossom, nodes.matchOwn[blossom] as number)
    const entry = nodes.memberWith(blossom, at)
    nodes.settle(blossom)
    nodes.open(blossom)
    nodes.matchRing(blossom, base)
    this.makeInner(entry, from, at)
    const outers = this.labelPath(entry, base)
    this.reachRest(entry)
    for (const node of outers) this.scanPoints(node)
  }

  /** From the entry around the ring to the base, the way that begins with the entry's match. */
  private labelPath(entry: number, base: number): number[] {
    const { nodes } = this
    const outers: number[] = []
    const forward = this.steps(base, entry) % 2 === 1
    for (let node = entry; node !== base; ) {
      const outer = (forward ? nodes.ringNext[node] : nodes.ringPrevious[node]) as number
      const next = (forward ? nodes.ringNext[outer] : nodes.ringPrevious[outer]) as number
      this.makeOuter(outer)
      outers.push(outer)
      if (forward) this.makeInner(next, nodes.ringOwn[outer] as number, nodes.ringOther[outer] as number)
      else this.makeInner(next, nodes.ringOther[next] as number, nodes.ringOwn[next] as number)
      node = next
    }
    return outers
  }

  private steps(from: number, to: number): number {
    let count = 0
    for (let node = from; node !== to; node = this.nodes.ringNext[node] as number) count += 1
    return count
  }

  /** Nodes of an opened ring that the tree left out: outer nodes around them may reach them. */
  private reachRest(ringMember: number): void {
    const { nodes } = this
    let node = ringMember
    do {
      if (nodes.label[node] === NONE) this.scanInto(node)
      node = nodes.ringNext[node] as number
    } while (node !== ringMember)
  }

  private scanInto(node: number): void {
    const { nodes, graph } = this
    const last = nodes.lastPoint[node] as number
    for (let point = nodes.firstPoint[node] as number; ; point = nodes.nextPoint[point] as number) {
      const dual = nodes.dual(point, node)
      const until = graph.start[point + 1] as number
      for (let edge = graph.start[point] as number; edge < until; edge += 1) {
        const other = graph.to[edge] as number
        const top = nodes.top(other)
        if (nodes.label[top] !== OUTER) continue
        const slack = (graph.weight[edge] as number) - dual - nodes.dual(other, top)
        this.mayReach(node, nodes.time + slack, point, edge)
      }
      if (point === last) return
    }
  }

  /** Swaps matched and unmatched along the tree, from the end's edge up to the root. */
  private augment(): void {
    const { nodes } = this
    let [own, other] = [this.endOwn, this.endOther]
    if (other !== NOBODY) {
      const partner = nodes.top(other)
      nodes.matchOwn[partner] = other
      nodes.matchOther[partner] = own
    }
    for (;;) {
      const outer = nodes.top(own)
      const before = nodes.matchOther[outer] as number
      nodes.matchOwn[outer] = own
      nodes.matchOther[outer] = other
      if (before === NOBODY) return
      const inner = nodes.top(before)
      other = nodes.reachedAt[inner] as number
      own = nodes.reachedFrom[inner] as number
      nodes.matchOwn[inner] = other
      nodes.matchOther[inner] = own
    }
  }

  private fell(): void {
    const { nodes, heap } = this
    for (const node of this.labelled) {
      if (nodes.label[node] !== NONE) nodes.settle(node)
    }
    for (const node of this.reached) this.reach[node] = Number.POSITIVE_INFINITY
    this.labelled.length = 0
    this.reached.length = 0
    heap.clear()
    nodes.time = 0
  }
}
