/**
 * The closest set of `count` tubes, exactly: lowest score, then lowest price,
 * then earliest marks; with a price cap, and within the yardsticks on request.
 *
 * A score depends only on the box a set spans in plate current and
 * transconductance, and a box inside another scores strictly less. So for the
 * best set S with box B, the `count` cheapest tubes of B are at least as good
 * as S, and are S. It is enough to look into boxes, not at sets:
 *
 *   for each lowest current, let tubes in by rising current (the slab);
 *   for each tube just let in, and each lower edge of transconductance at or
 *   below it, find the nearest upper edge at or above it with an affordable set.
 *
 * Every box whose corners are readings is met this way, but for those that
 * cannot beat what was found: a slab is left when its current spread alone
 * scores worse, an edge when the spread from it to the new tube does.
 * Tubes n, slab w: n·w·count steps without a cap, n·w·w at worst with one.
 */
import { CheapestWindow } from './cheapest-window'
import { compareFound, type Found, found } from './found'
import { affordable, byCurrent, byTransconductance, type Point, withoutSpares } from './point'
import { currentWithin, NEAR, type Scale, scoreOf, slopeWithin } from './score'
import { endOfCurrent, endOfSlope, firstAt, insert } from './slab'

export type ClosestQuery = {
  readonly points: readonly Point[]
  readonly count: number
  readonly scale: Scale
  /** Minor units for the set; Infinity for none. */
  readonly cap: number
  readonly withinYardsticks: boolean
}

export function closestSet(query: ClosestQuery): Found | null {
  const usable = affordable(withoutSpares(query.points, query.count), query.count, query.cap)
  return new ClosestSearch(query).over(usable.sort(byCurrent))
}

class ClosestSearch {
  private best: Found | null = null
  /** A score above this cannot win. */
  private ceiling = Number.POSITIVE_INFINITY

  constructor(private readonly query: ClosestQuery) {}

  over(byCurrentOrder: readonly Point[]): Found | null {
    for (let start = 0; start < byCurrentOrder.length; start = endOfCurrent(byCurrentOrder, start)) {
      this.slabFrom(byCurrentOrder, start)
    }
    return this.best
  }

  private slabFrom(points: readonly Point[], start: number): void {
    const slab: Point[] = []
    const lowest = (points[start] as Point).microamps
    for (let from = start; from < points.length; ) {
      const until = endOfCurrent(points, from)
      const microamps = (points[from] as Point).microamps - lowest
      if (this.currentTooWide(microamps)) return
      const entering = points.slice(from, until).sort(byTransconductance)
      for (const point of entering) insert(slab, point)
      if (slab.length >= this.query.count) this.entered(slab, entering, microamps)
      from = until
    }
  }

  private entered(slab: readonly Point[], entering: readonly Point[], microamps: number): void {
    entering.forEach((point, place) => {
      const sameAsBefore = entering[place - 1]?.microsiemens === point.microsiemens
      if (!sameAsBefore) this.boxesThrough(slab, point.microsiemens, microamps)
    })
  }

  /** Boxes over the slab that hold the transconductance `through`, lower edge falling. */
  private boxesThrough(slab: readonly Point[], through: number, microamps: number): void {
    const window = new CheapestWindow(this.query.count, this.query.cap)
    const core = endOfSlope(slab, firstAt(slab, through))
    let low = core
    let high = core
    while (low > 0) {
      const edge = (slab[low - 1] as Point).microsiemens
      if (this.slopeTooWide(microamps, edge, through)) return
      for (; low > 0 && (slab[low - 1] as Point).microsiemens === edge; low -= 1) window.add(slab[low - 1] as Point)
      high = this.widen(slab, window, high, edge, microamps)
      high = narrow(slab, window, high, core)
      if (!window.hasSet()) continue
      this.offer(window.set())
      // Upper edge at its lowest: a lower edge below this one only widens the box.
      if (high === core) return
    }
  }

  private widen(slab: readonly Point[], window: CheapestWindow, from: number, edge: number, microamps: number): number {
    let high = from
    while (high < slab.length && !window.hasSet()) {
      if (this.slopeTooWide(microamps, edge, (slab[high] as Point).microsiemens)) break
      const until = endOfSlope(slab, high)
      for (; high < until; high += 1) window.add(slab[high] as Point)
    }
    return high
  }

  private currentTooWide(microamps: number): boolean {
    const { scale, withinYardsticks } = this.query
    if (withinYardsticks && microamps > scale.microamps) return true
    return scoreOf(scale, microamps, 1, 1) > this.ceiling
  }

  private slopeTooWide(microamps: number, lowest: number, highest: number): boolean {
    const { scale, withinYardsticks } = this.query
    if (withinYardsticks && !slopeWithin(scale, lowest, highest)) return true
    return scoreOf(scale, microamps, lowest, highest) > this.ceiling
  }

  private offer(points: readonly Point[]): void {
    const { scale, withinYardsticks } = this.query
    const offered = found(points)
    const { spread } = offered
    if (withinYardsticks && !(currentWithin(spread, scale) && slopeWithin(scale, spread.lowest, spread.highest))) return
    if (this.best && compareFound(offered, scale, this.best, scale) >= 0) return
    this.best = offered
    const score = scoreOf(scale, spread.microamps, spread.lowest, spread.highest)
    this.ceiling = score + NEAR * Math.max(1, score)
  }
}

/** Lets go of upper groups while a set remains, never below the core. */
function narrow(slab: readonly Point[], window: CheapestWindow, from: number, core: number): number {
  let high = from
  while (high > core && window.hasSet()) {
    const group = firstAt(slab, (slab[high - 1] as Point).microsiemens)
    for (let place = group; place < high; place += 1) window.remove(slab[place] as Point)
    if (!window.hasSet()) {
      for (let place = group; place < high; place += 1) window.add(slab[place] as Point)
      return high
    }
    high = group
  }
  return high
}
