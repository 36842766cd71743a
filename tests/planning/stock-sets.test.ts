import { describe, expect, it } from 'vitest'
import type { Candidate } from '@/lib/domain/matching/candidate'
import { USUAL_SPREAD_RULE } from '@/lib/domain/pairing/spread-rule'
import { volts } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import type { SetsOrder, SetsPlan } from '@/lib/planning/sets/sets-plan'
import { COUNTED_AT_ONCE, setsPossible } from '@/lib/planning/sets/sets-possible'
import { setsTask } from '@/lib/planning/sets/sets-task'
import {
  madeText,
  meantText,
  possibleText,
  provedText,
  setDoubtText,
  testNextText,
} from '@/lib/planning/sets/sets-text'
import { type StockCohort, stockCohorts } from '@/lib/planning/sets/stock-cohorts'
import { AS_OF, aTest, aTube, readTube, someLimits } from '@/tests/domain/matching/tubes'

const rule = USUAL_SPREAD_RULE
const limits = someLimits({ yardsticks: rule.yardsticks, asOf: AS_OF })
const colder = { plateVoltage: volts(300), screenVoltage: volts(250), gridVoltage: volts(-14) }
const only = (stock: readonly Candidate[]): StockCohort => {
  const [cohort] = stockCohorts(stock, limits)
  if (!cohort) throw new Error('No cohort')
  return cohort
}
const context = { report: () => {}, cancelled: () => false }
const made = async (stock: readonly Candidate[], over: Partial<SetsOrder> = {}): Promise<SetsPlan> =>
  setsTask({ size: 2, cohort: only(stock), rule, asOf: AS_OF, seconds: 20, ...over }, context)

describe('the stock as it can be made into sets', () => {
  const stock = [
    readTube('T-1', 70, 6),
    readTube('T-2', 71, 6),
    readTube('T-3', 72, 6),
    aTube('T-4', { test: aTest({ testPoint: colder }) }),
    aTube('T-5', { test: aTest({ instrument: 'Old tester' }) }),
    aTube('T-6', { test: null }),
    aTube('T-7', { test: aTest({ testedAt: '2029-05-01' }) }),
    aTube('T-8', { state: { kind: 'reserved', holder: 'job 1001' } }),
    aTube('T-9', { condition: 'reject' }),
    { ...readTube('E-1', 60, 11), family: 'EL34' },
  ]

  it('one cohort for each instrument and test point; what is held, rejected or shorted is in none', () => {
    const cohorts = stockCohorts(stock, limits)
    expect(cohorts.map(({ family, tubes }) => [family, tubes.map(({ mark }) => mark)])).toEqual([
      ['6L6', ['T-1', 'T-2', 'T-3']],
      ['6L6', ['T-4']],
      ['6L6', ['T-5']],
      ['EL34', ['E-1']],
    ])
    expect(new Set(cohorts.map(({ key }) => key)).size).toBe(4)
  })

  it('the largest names as not comparable: untested, tested too long ago, elsewhere; each with its reason', () => {
    expect(
      only(stock).unread.map(({ candidate, reasons, oldReading }) => [
        candidate.mark,
        reasons[0]?.code,
        oldReading !== null,
      ]),
    ).toEqual([
      ['T-6', 'untested', false],
      ['T-7', 'test-too-old', true],
      ['T-4', 'other-test-point', false],
      ['T-5', 'other-instrument', false],
    ])
  })

  it('readings on another tester stand in the cohort as far as they can be carried over, each with where it came from', async () => {
    const figure = (name: 'plateCurrent' | 'transconductance') =>
      ({ from: 'Old tester', to: 'Bench tester 1', figure: name, factor: 0.96, readingUncertainty: 0.03 }) as const
    const carrying = { corrections: [figure('plateCurrent'), figure('transconductance')] }
    const tubes = [...stock.slice(0, 3), aTube('T-5', { test: aTest({ instrument: 'Old tester' }) })]
    const [cohort] = stockCohorts(tubes, { ...limits, carrying })
    if (!cohort) throw new Error('No cohort')
    // 72 mA there are 69.12 mA here, ± 3 %.
    const there = cohort.tubes.find(({ mark }) => mark === 'T-5')
    expect(there?.plateCurrent).toBeCloseTo(0.06912, 12)
    expect(there?.carried?.from).toBe('Old tester')
    expect(setsPossible(cohort.tubes, rule)?.pairs).toBe(2)
    expect(setsPossible(only(tubes).tubes, rule)?.pairs).toBe(1)
    const plan = await setsTask({ size: 2, cohort, rule, asOf: AS_OF, seconds: 20 }, context)
    const doubts = plan.sets.map((set) => setDoubtText(set, plan))
    expect(doubts.filter(Boolean)).toEqual(['Read on different instruments: apart to ±2.1 mA (95 %).'])
    expect(meantText(plan, { words: wordsFor('US'), formatMoney: String }, 'Tested')).toContain(
      'Readings on Old tester were carried over to Bench tester 1 by references read on both.',
    )
  })

  it('the key stays when a reading changes', () => {
    expect(only([readTube('T-1', 70, 6)]).key).toBe(only([readTube('T-9', 75, 6.4)]).key)
  })
})

describe('the level in sets', () => {
  // 70–75, 75–80, 80–85 mA: taking the middle pair leaves both ends single, so a greedy count finds one pair.
  it('pairs are counted exactly: 70, 75, 80, 85 mA make two, whatever the closest pair is', () => {
    const possible = setsPossible(only([70, 74.9, 79.5, 84.4].map((ma, at) => readTube(`T-${at}`, ma, 6))).tubes, rule)
    expect(possible).toEqual({ pairs: 2, quads: { least: 0, most: 0 } })
    expect(possible && possibleText(possible)).toBe('0')
    expect(possibleText({ pairs: 9, quads: { least: 2, most: 4 } })).toBe('2 to 4')
  })

  it('six tubes alike are three pairs or one quad; none is no set; too many are not counted while a page waits', () => {
    const alike = (count: number) => only(Array.from({ length: count }, (_, at) => readTube(`T-${at}`, 70, 6))).tubes
    expect(setsPossible(alike(6), rule)).toEqual({ pairs: 3, quads: { least: 1, most: 1 } })
    expect(setsPossible([], rule)).toEqual({ pairs: 0, quads: { least: 0, most: 0 } })
    expect(setsPossible(alike(COUNTED_AT_ONCE + 1), rule)).toBeNull()
  })

  it('unread transconductance compares by current alone', () => {
    expect(setsPossible(only([readTube('T-1', 70, null), readTube('T-2', 74, null)]).tubes, rule)?.pairs).toBe(1)
  })
})

describe('sets for the shelf', () => {
  it('two pairs and a single from five, proved, with the sum of prices and what to test next', async () => {
    const old = aTube('T-9', {
      test: aTest({ testedAt: '2029-05-01', plateCurrent: readTube('x', 81, 6).test?.plateCurrent }),
    })
    const plan = await made([
      ...[70, 70.5, 75, 75.4, 83].map((ma, at) => readTube(`T-${at + 1}`, ma, 6, 4000 + 100 * at)),
      aTube('T-8', { test: null }),
      old,
    ])
    expect(plan.sets.map(({ tubes, price }) => [tubes.map(({ mark }) => mark), price])).toEqual([
      [['T-1', 'T-2'], 8100],
      [['T-3', 'T-4'], 8500],
    ])
    expect(madeText(plan, wordsFor('US'))).toBe('2 pairs from 5 6L6 tubes, 1 single left.')
    expect(provedText(plan)).toMatch(/^No other way of making them spreads less.*\(proved\)\.$/)
    // 81 mA was read two years ago, 2 mA from the single.
    expect(plan.testNext.map((each) => [each.candidate.mark, testNextText(each)])).toEqual([
      ['T-9', 'its old reading lies near that of T-5'],
      ['T-8', 'nothing can be said of it yet'],
    ])
  })

  it('a quad out of five, and nothing to test next when nothing is left over', async () => {
    const plan = await made(
      [70, 70.2, 70.4, 70.6].map((ma, at) => readTube(`T-${at}`, ma, 6)),
      { size: 4 },
    )
    expect(plan).toMatchObject({
      sets: [{ spreads: { transconductance: 0 } }],
      singles: [],
      testNext: [],
      ended: 'optimal',
    })
    expect(plan.sets[0]?.spreads.plateCurrent).toBeCloseTo(0.0006, 9)
  })
})
