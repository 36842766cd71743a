/**
 * How well the difference of two predicted plate currents is known, A, half of a 95 % band.
 *
 * What the two share cancels: the circuit's doubt always; the curves' and most of the
 * tester's where both were tested on one instrument at one test point. A quarter of what a
 * tester is good for is then taken as its scatter from tube to tube (shop rule, no source).
 * Tested apart, nothing of a tube's own band is taken to cancel.
 *   same      √2 · ¼ · widest half by readings
 *   apart     √2 · widest half
 */
import { type Amps, amps } from '../units'
import { instrumentKey, samePoint } from './cohort'
import type { TubePoint } from './ranked-stock'

const SCATTER = 0.25

/** null: not predicted, or one alone. */
export function doubtOfDifference(points: readonly TubePoint[]): Amps | null {
  const [first] = points
  const predicted = points.flatMap((point) => point.predicted ?? [])
  if (!first || points.length < 2 || predicted.length < points.length) return null
  const alike = points.every(({ tube }) => sameTest(tube.test, first.tube.test))
  const halves = predicted.map(({ plateCurrent: { low, high }, byReadings }) =>
    alike ? SCATTER * byReadings : (high - low) / 2,
  )
  return amps(Math.SQRT2 * Math.max(...halves))
}

type Test = TubePoint['tube']['test']

const sameTest = (a: Test, b: Test): boolean =>
  instrumentKey(a.instrument) === instrumentKey(b.instrument) && samePoint(a.testPoint, b.testPoint)
