/**
 * Which tubes to test next: how many more sets each test is expected to give
 * together with tubes that were left single.
 *
 *   expected extra sets = probability that the reading lies where the tube
 *                         and size - 1 of the singles are within both yardsticks
 *
 * An untested tube is expected where its type usually lies, a tube with an old
 * test where it was read, give or take what such tubes drift: normal, current
 * and transconductance independent (they are not quite: a simplification). The
 * plane is cut into tenths of a yardstick; a square counts by its middle.
 *
 * One test at a time: two tubes may be waiting for the same single, so the
 * figures do not add up. A test that breaks up sets to make better ones is not
 * counted. It is a ranking, not a promise.
 */
import { naturalOrder } from '../matching/natural-order'
import type { Amps, Siemens } from '../units'
import { shareBelow } from './normal-share'
import { type ReadTube, type SpreadRule, stepsOf, widthsOf } from './spread-rule'

export type Untested = {
  readonly mark: string
  readonly expected: {
    readonly plateCurrent: Amps
    /** null: the singles are compared by current alone. */
    readonly transconductance: Siemens | null
  }
  /** Standard deviations, above 0. */
  readonly deviation: { readonly plateCurrent: Amps; readonly transconductance: Siemens }
}

export type TestWorth = {
  readonly mark: string
  /** 0 to 1. */
  readonly expectedSets: number
}

const SQUARES_A_YARDSTICK = 10
/** Deviations looked at on each side. */
const REACH = 4

/** Most worthwhile first, equal ones by mark. `size`: tubes in a set. */
export function testNext(
  untested: readonly Untested[],
  singles: readonly ReadTube[],
  rule: SpreadRule,
  size: number,
): readonly TestWorth[] {
  const field = new SinglesField(singles, rule, size)
  return untested
    .map((tube) => ({ mark: tube.mark, expectedSets: field.worth(tube) }))
    .sort((a, b) => b.expectedSets - a.expectedSets || naturalOrder(a.mark, b.mark))
}

/** Of one axis: where it is cut, and how much of the tube lies in each part. */
type Axis = { readonly middles: readonly number[]; readonly shares: readonly number[] }

class SinglesField {
  private readonly points: readonly (readonly [number, number])[]
  private readonly widths: { readonly x: number; readonly y: number }

  constructor(
    singles: readonly ReadTube[],
    private readonly rule: SpreadRule,
    private readonly size: number,
  ) {
    this.points = singles.map((tube) => stepsOf(tube, rule)).sort(([a], [b]) => a - b)
    this.widths = widthsOf(rule)
  }

  worth({ mark, expected, deviation }: Untested): number {
    const { rule } = this
    const at = (plateCurrent: number, transconductance: number | null) =>
      stepsOf({ mark, plateCurrent: plateCurrent as Amps, transconductance: transconductance as Siemens | null }, rule)
    const { plateCurrent, transconductance } = expected
    const [x, y] = at(plateCurrent, transconductance)
    const dx = at(plateCurrent + deviation.plateCurrent, transconductance)[0] - x
    const dy = transconductance === null ? 0 : at(plateCurrent, transconductance + deviation.transconductance)[1] - y
    const across = axis(x, dx, this.widths.x)
    const upward = axis(y, dy, this.widths.y)
    let worth = 0
    across.middles.forEach((column, i) => {
      const near = this.points.filter(([px]) => Math.abs(px - column) <= this.widths.x)
      if (near.length < this.size - 1) return
      upward.middles.forEach((row, j) => {
        if (this.completes(near, column, row)) worth += (across.shares[i] as number) * (upward.shares[j] as number)
      })
    })
    return worth
  }

  /** Whether some of the singles make a set with a tube read there: one stretch of x, and in it one of y. */
  private completes(near: readonly (readonly [number, number])[], column: number, row: number): boolean {
    const { x: width, y: height } = this.widths
    const wanted = this.size - 1
    const inReach = near.filter(([, py]) => Math.abs(py - row) <= height)
    for (let first = 0; first + wanted <= inReach.length; first += 1) {
      const left = Math.min(column, (inReach[first] as readonly [number, number])[0])
      const stretch = inReach.slice(first).filter(([px]) => Math.max(px, column) - left <= width)
      const rows = stretch.map(([, py]) => py).sort((a, b) => a - b)
      for (let low = 0; low + wanted <= rows.length; low += 1) {
        const [bottom, top] = [rows[low] as number, rows[low + wanted - 1] as number]
        if (Math.max(top, row) - Math.min(bottom, row) <= height) return true
      }
    }
    return false
  }
}

function axis(mean: number, deviation: number, width: number): Axis {
  if (deviation <= 0) return { middles: [mean], shares: [1] }
  const part = Math.max(width / SQUARES_A_YARDSTICK, deviation / 50)
  const parts = Math.ceil((2 * REACH * deviation) / part)
  const from = mean - (parts * part) / 2
  const cuts = Array.from({ length: parts + 1 }, (_, place) => shareBelow(from + place * part, mean, deviation))
  return {
    middles: Array.from({ length: parts }, (_, place) => from + (place + 0.5) * part),
    shares: Array.from({ length: parts }, (_, place) => (cuts[place + 1] as number) - (cuts[place] as number)),
  }
}
