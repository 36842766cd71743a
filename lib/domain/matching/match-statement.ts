/**
 * The facts without which a claimed match is void: dates of test, instrument,
 * test point, spreads reached and yardsticks held against them.
 */
import { amps } from '../units'
import type { Yardsticks } from './candidate'
import { dayOf } from './eligibility'
import type { CarriedMatch, MatchStatement, PredictedMatch, SetOption } from './proposal'

/** `readOn`: ISO date of the readings that predicted figures rest on; null: none are. */
export function matchStatement(
  option: SetOption,
  yardsticks: Yardsticks,
  readOn: string | null = null,
): MatchStatement {
  const days = option.tubes.map(({ candidate }) => dayOf(candidate.test.testedAt)).sort()
  const predicted = readOn === null ? null : predictedMatch(option, readOn)
  return {
    firstTested: days[0] as string,
    lastTested: days[days.length - 1] as string,
    instrument: option.instrument,
    testPoint: option.testPoint,
    spreads: option.spreads,
    yardsticks,
    match: option.match,
    ...(predicted ? { predicted } : {}),
    ...carriedFacts(option, predicted !== null),
  }
}

function carriedFacts(
  { tubes, doubt, slopeDoubt }: SetOption,
  predicted: boolean,
): Pick<MatchStatement, 'carried' | 'apart'> {
  const carried = carriedMatches(tubes)
  if (carried.length === 0) return {}
  return {
    carried,
    ...(predicted || doubt === null ? {} : { apart: { plateCurrent: doubt, transconductance: slopeDoubt } }),
  }
}

/** By the instrument they were read on, its name in order. */
export function carriedMatches(tubes: SetOption['tubes']): CarriedMatch[] {
  const groups = new Map<string, CarriedMatch>()
  for (const { candidate } of tubes) {
    const { carried } = candidate.test
    if (!carried) continue
    const { from, current, slope } = carried
    const marks = groups.get(from)?.marks ?? []
    groups.set(from, { marks: [...marks, candidate.mark], from, current, slope })
  }
  return [...groups.values()].sort((a, b) => (a.from < b.from ? -1 : 1))
}

function predictedMatch({ tubes, doubt }: SetOption, readOn: string): PredictedMatch | null {
  const bands = tubes.flatMap(({ predicted }) => predicted?.plateCurrent ?? [])
  if (bands.length === 0) return null
  return {
    readOn,
    lowest: amps(Math.min(...bands.map(({ value }) => value))),
    highest: amps(Math.max(...bands.map(({ value }) => value))),
    plusMinus: amps(Math.max(...bands.map(({ low, high }) => (high - low) / 2))),
    apartPlusMinus: doubt,
    instruments: [
      ...new Set(tubes.map(({ candidate: { test } }) => (test.carried?.from ?? test.instrument).trim())),
    ].sort(),
  }
}
