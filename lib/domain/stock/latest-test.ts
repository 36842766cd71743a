/**
 * Which test record speaks for a tube: the latest with a plate current at a
 * known point. A short found at or after it counts beside it, because a later
 * short is never outweighed by an older good reading; a good reading after a
 * short (pins cleaned, tested again) is.
 */
import type { SectionReading, StockedTube, Tube, TubeTest } from './tube'

/** As much of a record as decides whether it speaks for its tube. */
type Judged = Pick<TubeTest, 'shorts' | 'plateVoltage' | 'testedAt'> & {
  readonly sections: readonly Pick<SectionReading, 'plateCurrent'>[]
}

export function isUsable({ shorts, plateVoltage, sections }: Omit<Judged, 'testedAt'>): boolean {
  return !shorts && plateVoltage !== null && sections[0] !== undefined && sections[0].plateCurrent !== null
}

export type SpokenFor<Test> = {
  /** Latest usable record; null when there is none. */
  readonly test: Test | null
  /** A short found at or after that record. Null: none. */
  readonly shortsFoundAt: Date | null
}

/** `tests` newest first. */
export const stockedTube = (tube: Tube, tests: readonly TubeTest[]): StockedTube => ({ tube, ...spokenFor(tests) })

/** The same of as much of the records as is at hand. */
export function spokenFor<Test extends Judged>(tests: readonly Test[]): SpokenFor<Test> {
  const test = tests.find(isUsable) ?? null
  const short = tests.find((one) => one.shorts && (test === null || one.testedAt >= test.testedAt))
  return { test, shortsFoundAt: short?.testedAt ?? null }
}
