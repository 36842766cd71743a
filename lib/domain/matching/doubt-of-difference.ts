/**
 * How well the difference of two plate currents is known, A, half of a 95 % band.
 *
 * Predicted: what the two share cancels: the circuit's doubt always; the curves' and most of
 * the tester's where both were tested on one instrument at one test point. A quarter of what
 * a tester is good for is then taken as its scatter from tube to tube (shop rule, no source).
 * Tested apart, nothing of a tube's own band is taken to cancel.
 *   same      √2 · ¼ · widest half by readings
 *   apart     √2 · widest half
 *
 * Carried over to one instrument: tubes carried by one correction share its error, which
 * cancels between them (JCGM 100:2008, 5.2.2: fully correlated), as it does between tubes that
 * were not carried at all. Only across does it count, with the scatter of one reading carried:
 *   carried and not        h,   h half of the band that carrying puts on the one
 *   by two corrections     √(h₁² + h₂²)
 * joined with the above as independent. What is left between two tubes carried alike, a few
 * per cent of their difference itself, is far below a reading and left out. Readings compared
 * as they stand at the test point have no doubt beside that.
 */
import { type Amps, amps, type Ratio, ratio } from '../units'
import type { TubeTest } from './candidate'
import { instrumentKey, samePoint } from './cohort'
import type { TubePoint } from './ranked-stock'

const SCATTER = 0.25

/** null: one alone, or readings of one instrument compared as they stand. */
export function doubtOfDifference(points: readonly TubePoint[]): Amps | null {
  const [first] = points
  const predicted = points.flatMap((point) => point.predicted ?? [])
  if (!first || points.length < 2) return null
  if (predicted.length < points.length) {
    const across = acrossCorrections(testsOf(points), (test) => (test.carried?.current.share ?? 0) * test.plateCurrent)
    return across > 0 ? amps(across) : null
  }
  if (!points.every(({ tube }) => sameTest(tube.test, first.tube.test)))
    return amps(Math.SQRT2 * Math.max(...predicted.map(({ plateCurrent: { low, high } }) => (high - low) / 2)))
  const scatter = Math.SQRT2 * Math.max(...predicted.map(({ byReadings }) => SCATTER * byReadings))
  const tubes = points.map(({ tube, predicted }) => ({ ...tube.test, half: predicted?.byCarrying ?? 0 }))
  return amps(
    Math.hypot(
      scatter,
      acrossCorrections(tubes, ({ half }) => half),
    ),
  )
}

/** Of transconductances at the test point, as a share: they are held together as a ratio. null: as above, or predicted. */
export function doubtOfRatio(points: readonly TubePoint[]): Ratio | null {
  if (points.length < 2 || points.some(({ predicted }) => predicted !== null)) return null
  const across = acrossCorrections(testsOf(points), ({ carried }) => carried?.slope?.share ?? 0)
  return across > 0 ? ratio(across) : null
}

const testsOf = (points: readonly TubePoint[]) => points.map(({ tube }) => tube.test)

/** Of the two corrections that are furthest in doubt; tubes that were not carried are in none. 0: all were carried alike. */
export function acrossCorrections<T extends Pick<TubeTest, 'carried'>>(
  tests: readonly T[],
  half: (test: T) => number,
): number {
  const widest = new Map<string, number>()
  for (const test of tests) {
    const from = carriedFrom(test)
    widest.set(from, Math.max(widest.get(from) ?? 0, half(test)))
  }
  if (widest.size < 2) return 0
  const [one = 0, other = 0] = [...widest.values()].sort((a, b) => b - a)
  return Math.hypot(one, other)
}

const carriedFrom = ({ carried }: Pick<TubeTest, 'carried'>): string => (carried ? instrumentKey(carried.from) : '')

const sameTest = (a: TubeTest, b: TubeTest): boolean =>
  instrumentKey(a.instrument) === instrumentKey(b.instrument) && samePoint(a.testPoint, b.testPoint)
