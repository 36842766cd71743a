/**
 * The nodes of Edmonds' algorithm: points 0 to n - 1, and blossoms above them.
 *
 * A blossom is an odd ring of nodes. Nodes that are in no blossom are "top".
 * Everything is kept in typed arrays and nothing recurses, however deep the
 * blossoms nest:
 *
 * - the points of a node are a linked list, joined when a ring closes and cut
 *   again when it opens;
 * - the top node above a point is found by jumps from point to point that
 *   shorten themselves, up to the point that speaks for the node; a blossom
 *   takes the speaker of its largest member, so that opening it touches only
 *   the points of the others;
 * - duals of points are kept relative to the jumps, so that a whole node is
 *   raised or lowered in one step;
 * - a match is kept on top nodes only, as an edge between two points. What it
 *   means inside a blossom follows from the ring, and is worked out when the
 *   blossom opens.
 *
 * Duals: u of each point, z >= 0 of each blossom, all in doubled distances.
 */
export const NONE = 0
export const OUTER = 1
export const INNER = -1
export const NOBODY = -1

export class BlossomNodes {
  readonly z: Float64Array
  /** The blossom a node lies in, or NOBODY. */
  readonly up: Int32Array
  /** The matched edge of a top node: its own point, and the other one. NOBODY twice: free. NOBODY as other: single. */
  readonly matchOwn: Int32Array
  readonly matchOther: Int32Array
  readonly label: Int8Array
  /** When the label was given. */
  readonly since: Float64Array
  /** The edge by which an inner node was reached: a point of an outer node, a point of this one. */
  readonly reachedFrom: Int32Array
  readonly reachedAt: Int32Array
  readonly ringNext: Int32Array
  readonly ringPrevious: Int32Array
  /** The ring's edge to the next node: a point of this node, a point of the next. */
  readonly ringOwn: Int32Array
  readonly ringOther: Int32Array
  /** Any node of a blossom's ring. */
  readonly ringStart: Int32Array
  readonly firstPoint: Int32Array
  readonly lastPoint: Int32Array
  readonly nextPoint: Int32Array
  /** Time of the tree that is growing; 0 between trees. */
  time = 0

  private readonly u: Float64Array
  /** Points of a node. */
  private readonly size: Int32Array
  /** The point of a node that speaks for it. */
  private readonly speaker: Int32Array
  /** What a speaking point speaks for. */
  private readonly spokenFor: Int32Array
  private readonly jump: Int32Array
  /** What to add to u of this point and of all that jump to it. */
  private readonly raise: Float64Array
  private readonly unused: number[] = []

  constructor(readonly count: number) {
    const nodes = count + (count >> 1) + 1
    const whole = (value: number) => new Int32Array(nodes).fill(value)
    this.u = new Float64Array(count)
    this.z = new Float64Array(nodes)
    this.up = whole(NOBODY)
    this.matchOwn = whole(NOBODY)
    this.matchOther = whole(NOBODY)
    this.label = new Int8Array(nodes)
    this.since = new Float64Array(nodes)
    this.reachedFrom = whole(NOBODY)
    this.reachedAt = whole(NOBODY)
    this.ringNext = whole(NOBODY)
    this.ringPrevious = whole(NOBODY)
    this.ringOwn = whole(NOBODY)
    this.ringOther = whole(NOBODY)
    this.ringStart = whole(NOBODY)
    this.firstPoint = whole(NOBODY)
    this.lastPoint = whole(NOBODY)
    this.nextPoint = new Int32Array(count).fill(NOBODY)
    this.size = whole(1)
    this.speaker = whole(NOBODY)
    this.spokenFor = new Int32Array(count)
    this.jump = new Int32Array(count)
    this.raise = new Float64Array(count)
    for (let point = 0; point < count; point += 1) {
      for (const self of [this.speaker, this.spokenFor, this.jump, this.firstPoint, this.lastPoint]) self[point] = point
    }
    for (let node = nodes - 1; node >= count; node -= 1) this.unused.push(node)
  }

  isBlossom(node: number): boolean {
    return node >= this.count
  }

  isFree(node: number): boolean {
    return this.matchOwn[node] === NOBODY
  }

  /** The top node above a point. */
  top(point: number): number {
    const { jump } = this
    const next = jump[point] as number
    return this.spokenFor[jump[next] === next ? next : this.shorten(point)] as number
  }

  private shorten(from: number): number {
    const { jump, raise } = this
    let end = from
    let total = 0
    for (let next = jump[end] as number; next !== end; next = jump[end] as number) {
      total += raise[end] as number
      end = next
    }
    for (let point = from; point !== end; ) {
      const next = jump[point] as number
      const own = raise[point] as number
      jump[point] = end
      raise[point] = total
      total -= own
      point = next
    }
    return end
  }

  /** u of a point at this time; `top` is its top node, just asked for. */
  dual(point: number, top: number): number {
    const end = this.jump[point] as number
    const raised = (this.u[point] as number) + (this.raise[point] as number) + this.drift(top)
    return end === point ? raised : raised + (this.raise[end] as number)
  }

  /** What the points of a top node have gained since it was labelled. */
  private drift(top: number): number {
    const label = this.label[top] as number
    return label === NONE ? 0 : label * (this.time - (this.since[top] as number))
  }

  blossomDual(top: number): number {
    return (this.z[top] as number) + 2 * this.drift(top)
  }

  /** Takes the label away, after writing down what it did. */
  settle(top: number): void {
    const drift = this.drift(top)
    this.raiseAll(top, drift)
    if (this.isBlossom(top)) this.z[top] = (this.z[top] as number) + 2 * drift
    this.label[top] = NONE
  }

  isTop(node: number): boolean {
    return this.spokenFor[this.speaker[node] as number] === node
  }

  /** Raises all points of a top node. */
  raiseAll(top: number, by: number): void {
    const speaker = this.speaker[top] as number
    this.raise[speaker] = (this.raise[speaker] as number) + by
  }

  /** Joins two neighbours of a ring. */
  link(node: number, next: number, own: number, other: number): void {
    this.ringNext[node] = next
    this.ringPrevious[next] = node
    this.ringOwn[node] = own
    this.ringOther[node] = other
  }

  /** A blossom of a closed ring of settled top nodes; matched as `start` is. */
  close(start: number): number {
    const blossom = this.unused.pop()
    if (blossom === undefined) throw new Error('More blossoms than a laminar family can have')
    this.matchOwn[blossom] = this.matchOwn[start] as number
    this.matchOther[blossom] = this.matchOther[start] as number
    this.ringStart[blossom] = start
    this.up[blossom] = NOBODY
    this.z[blossom] = 0
    this.gather(blossom, start)
    this.speakFor(blossom, this.largest(start))
    return blossom
  }

  /** Strings the points of the ring together. */
  private gather(blossom: number, start: number): void {
    let last = NOBODY
    let size = 0
    let node = start
    do {
      this.up[node] = blossom
      size += this.size[node] as number
      if (last !== NOBODY) this.nextPoint[last] = this.firstPoint[node] as number
      last = this.lastPoint[node] as number
      node = this.ringNext[node] as number
    } while (node !== start)
    this.firstPoint[blossom] = this.firstPoint[start] as number
    this.lastPoint[blossom] = last
    this.size[blossom] = size
  }

  private largest(start: number): number {
    let largest = start
    for (let node = this.ringNext[start] as number; node !== start; node = this.ringNext[node] as number) {
      if ((this.size[node] as number) > (this.size[largest] as number)) largest = node
    }
    return largest
  }

  private speakFor(blossom: number, heir: number): void {
    const { jump, raise } = this
    const speaker = this.speaker[heir] as number
    for (let node = this.ringNext[heir] as number; node !== heir; node = this.ringNext[node] as number) {
      const other = this.speaker[node] as number
      jump[other] = speaker
      raise[other] = (raise[other] as number) - (raise[speaker] as number)
    }
    this.speaker[blossom] = speaker
    this.spokenFor[speaker] = blossom
  }

  /** The node of the blossom's ring that holds the point. */
  memberWith(blossom: number, point: number): number {
    let node = point
    while (this.up[node] !== blossom) node = this.up[node] as number
    return node
  }

  /** Makes the nodes of a settled blossom's ring top again. Their matches are those of `matchRing`. */
  open(blossom: number): void {
    const start = this.ringStart[blossom] as number
    const speaker = this.speaker[blossom] as number
    let node = start
    do {
      if (this.speaker[node] === speaker) this.spokenFor[speaker] = node
      else this.standAlone(node, blossom)
      this.up[node] = NOBODY
      this.label[node] = NONE
      this.nextPoint[this.lastPoint[node] as number] = NOBODY
      node = this.ringNext[node] as number
    } while (node !== start)
    this.unused.push(blossom)
  }

  /** First all duals are written down, then the jumps cut: until then points reckon over one another. */
  private standAlone(node: number, blossom: number): void {
    const [first, last] = [this.firstPoint[node] as number, this.lastPoint[node] as number]
    const speaker = this.speaker[node] as number
    for (let point = first; ; point = this.nextPoint[point] as number) {
      this.top(point)
      this.u[point] = this.dual(point, blossom)
      if (point === last) break
    }
    for (let point = first; ; point = this.nextPoint[point] as number) {
      this.raise[point] = 0
      this.jump[point] = speaker
      if (point === last) break
    }
    this.spokenFor[speaker] = node
  }

  /** Hands a blossom's match down to its ring: `base` takes it, the others pair off around the ring. */
  matchRing(blossom: number, base: number): void {
    this.matchOwn[base] = this.matchOwn[blossom] as number
    this.matchOther[base] = this.matchOther[blossom] as number
    for (let node = this.ringNext[base] as number; node !== base; ) {
      const mate = this.ringNext[node] as number
      this.match(node, this.ringOwn[node] as number, mate, this.ringOther[node] as number)
      node = this.ringNext[mate] as number
    }
  }

  match(a: number, ofA: number, b: number, ofB: number): void {
    this.matchOwn[a] = ofA
    this.matchOther[a] = ofB
    this.matchOwn[b] = ofB
    this.matchOther[b] = ofA
  }

  /** Sets the dual of a point that is its own top node. */
  setDual(point: number, dual: number): void {
    this.u[point] = dual
  }

  setFree(top: number): void {
    this.matchOwn[top] = NOBODY
    this.matchOther[top] = NOBODY
  }
}
