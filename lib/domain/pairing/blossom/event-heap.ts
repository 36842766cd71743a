/**
 * Events of a growing tree by the time they fall due: two whole numbers each.
 * A binary heap in typed arrays that grow. Equal times leave in an order that
 * depends on the pushes alone.
 */
export class EventHeap {
  private times = new Float64Array(1024)
  private firsts = new Int32Array(1024)
  private seconds = new Int32Array(1024)
  private count = 0

  clear(): void {
    this.count = 0
  }

  /** Infinity when empty. */
  nextTime(): number {
    return this.count === 0 ? Number.POSITIVE_INFINITY : (this.times[0] as number)
  }

  first(): number {
    return this.firsts[0] as number
  }

  second(): number {
    return this.seconds[0] as number
  }

  push(time: number, first: number, second: number): void {
    if (this.count === this.times.length) this.enlarge()
    const { times } = this
    let hole = this.count
    this.count += 1
    while (hole > 0) {
      const above = (hole - 1) >> 1
      if ((times[above] as number) <= time) break
      this.move(above, hole)
      hole = above
    }
    this.put(hole, time, first, second)
  }

  /** Takes the earliest out. */
  drop(): void {
    this.count -= 1
    const { times, count } = this
    if (count === 0) return
    const time = times[count] as number
    let hole = 0
    for (;;) {
      let below = 2 * hole + 1
      if (below >= count) break
      if (below + 1 < count && (times[below + 1] as number) < (times[below] as number)) below += 1
      if ((times[below] as number) >= time) break
      this.move(below, hole)
      hole = below
    }
    this.put(hole, time, this.firsts[count] as number, this.seconds[count] as number)
  }

  private move(from: number, to: number): void {
    this.times[to] = this.times[from] as number
    this.firsts[to] = this.firsts[from] as number
    this.seconds[to] = this.seconds[from] as number
  }

  private put(place: number, time: number, first: number, second: number): void {
    this.times[place] = time
    this.firsts[place] = first
    this.seconds[place] = second
  }

  private enlarge(): void {
    const [times, firsts, seconds] = [this.times, this.firsts, this.seconds]
    this.times = new Float64Array(2 * times.length)
    this.firsts = new Int32Array(2 * times.length)
    this.seconds = new Int32Array(2 * times.length)
    this.times.set(times)
    this.firsts.set(firsts)
    this.seconds.set(seconds)
  }
}
