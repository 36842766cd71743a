/**
 * The facts without which a claimed match is void: dates of test, instrument,
 * test point, spreads reached and yardsticks held against them.
 */
import type { Yardsticks } from './candidate'
import { dayOf } from './eligibility'
import type { MatchStatement, SetOption } from './proposal'

export function matchStatement(option: SetOption, yardsticks: Yardsticks): MatchStatement {
  const days = option.tubes.map(({ candidate }) => dayOf(candidate.test.testedAt)).sort()
  return {
    firstTested: days[0] as string,
    lastTested: days[days.length - 1] as string,
    instrument: option.instrument,
    testPoint: option.testPoint,
    spreads: option.spreads,
    yardsticks,
    match: option.match,
  }
}
