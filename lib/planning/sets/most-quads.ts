/**
 * The most sets of four that a stock gives at once, each within the limits: exactly, as long as
 * that takes no more than so many steps.
 *
 * Tubes by rising current. The first of them either stays single or is the weakest of a quad with
 * three of those after it within reach; whatever is left of those in reach is all that the rest
 * depends on, so each such rest is worked out once. Where currents lie apart by more than the
 * limit nothing is left over from before, so the steps grow with how crowded a stretch of the
 * stock is, not with its length.
 */
export type ReadPoint = {
  readonly x: number
  /** Above zero. */
  readonly y: number
}

export type QuadLimits = {
  /** Highest less lowest x, inclusive. */
  readonly xLimit: number
  /** Highest over lowest y less one, in ten-thousandths, inclusive. */
  readonly yLimit: number
}

const STEPS = 30_000

/** null: given up. */
export function mostQuads(points: readonly ReadPoint[], limits: QuadLimits): number | null {
  const rising = [...points].sort((a, b) => a.x - b.x || a.y - b.y)
  const search = new QuadSearch(rising, limits)
  try {
    return search.from(0, [])
  } catch (error) {
    if (error instanceof TooManySteps) return null
    throw error
  }
}

class TooManySteps extends Error {}

class QuadSearch {
  private readonly known = new Map<string, number>()
  private steps = 0

  constructor(
    private readonly points: readonly ReadPoint[],
    private readonly limits: QuadLimits,
  ) {}

  /** Of the points from `first` on but those taken, rising. */
  from(first: number, taken: readonly number[]): number {
    if (taken[0] === first) return this.from(first + 1, taken.slice(1))
    const left = this.points.length - first - taken.length
    if (left < 4) return 0
    const key = `${first}:${taken.join()}`
    const before = this.known.get(key)
    if (before !== undefined) return before
    const most = this.searched(first, taken, Math.floor(left / 4))
    this.known.set(key, most)
    return most
  }

  private searched(first: number, taken: readonly number[], bound: number): number {
    let most = 0
    for (const three of this.threes(first, taken)) {
      most = Math.max(
        most,
        1 +
          this.from(
            first + 1,
            [...taken, ...three].sort((a, b) => a - b),
          ),
      )
      if (most === bound) return most
    }
    return Math.max(most, this.from(first + 1, taken))
  }

  /** That make a quad with the first. */
  private *threes(first: number, taken: readonly number[]): Generator<readonly [number, number, number]> {
    const near = this.near(first, taken)
    for (let a = 0; a < near.length - 2; a += 1) {
      for (let b = a + 1; b < near.length - 1; b += 1) {
        if (!this.within([first, near[a] as number, near[b] as number])) continue
        for (let c = b + 1; c < near.length; c += 1) {
          this.steps += 1
          if (this.steps > STEPS) throw new TooManySteps()
          const three = [near[a] as number, near[b] as number, near[c] as number] as const
          if (this.within([first, ...three])) yield three
        }
      }
    }
  }

  private near(first: number, taken: readonly number[]): number[] {
    const near: number[] = []
    const reach = (this.points[first]?.x ?? 0) + this.limits.xLimit
    for (let at = first + 1; at < this.points.length && (this.points[at]?.x ?? 0) <= reach; at += 1) {
      if (!taken.includes(at) && this.within([first, at])) near.push(at)
    }
    return near
  }

  private within(places: readonly number[]): boolean {
    const ys = places.map((place) => this.points[place]?.y ?? 0)
    const [lowest, highest] = [Math.min(...ys), Math.max(...ys)]
    return (highest - lowest) * 10_000 <= this.limits.yLimit * lowest
  }
}
