/**
 * The tubes of a moving window, kept in order of rank, so that the cheapest
 * set in the window is always its first `count` tubes: they have the lowest
 * price sum there is, and among equal sums the earliest marks.
 */
import type { Point } from './point'

export class CheapestWindow {
  private readonly points: Point[] = []

  constructor(
    private readonly count: number,
    private readonly cap: number,
  ) {}

  add(point: Point): void {
    this.points.splice(this.placeOf(point.rank), 0, point)
  }

  remove(point: Point): void {
    const place = this.placeOf(point.rank)
    if (this.points[place]?.rank === point.rank) this.points.splice(place, 1)
  }

  /** Infinity when there are too few. */
  price(): number {
    if (this.points.length < this.count) return Number.POSITIVE_INFINITY
    let total = 0
    for (let place = 0; place < this.count; place += 1) total += (this.points[place] as Point).price
    return total
  }

  hasSet(): boolean {
    return this.points.length >= this.count && this.price() <= this.cap
  }

  set(): Point[] {
    return this.points.slice(0, this.count)
  }

  private placeOf(rank: number): number {
    let low = 0
    let high = this.points.length
    while (low < high) {
      const middle = (low + high) >> 1
      if ((this.points[middle] as Point).rank < rank) low = middle + 1
      else high = middle
    }
    return low
  }
}
