/**
 * Which test record speaks for a tube: the latest with a plate current at a
 * known point. A short found at or after it counts beside it, because a later
 * short is never outweighed by an older good reading; a good reading after a
 * short (pins cleaned, tested again) is.
 */
import type { StockedTube, Tube, TubeTest } from './tube'

export function isUsable({ shorts, plateVoltage, sections }: TubeTest): boolean {
  return !shorts && plateVoltage !== null && sections[0] !== undefined && sections[0].plateCurrent !== null
}

/** `tests` newest first. */
export function stockedTube(tube: Tube, tests: readonly TubeTest[]): StockedTube {
  const test = tests.find(isUsable) ?? null
  const short = tests.find((one) => one.shorts && (test === null || one.testedAt >= test.testedAt))
  return { tube, test, shortsFoundAt: short?.testedAt ?? null }
}
