import { describe, expect, it } from 'vitest'
import type { Candidate, MatchLimits, SocketDemand } from '@/lib/domain/matching/candidate'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import { matchStatement } from '@/lib/domain/matching/match-statement'
import { exclusionText, type MatchingFormat } from '@/lib/domain/matching/matching-text'
import type { PredictedTube, Predictions } from '@/lib/domain/matching/predicted-tube'
import { proposeSet } from '@/lib/domain/matching/propose-set'
import { matchStatementText, testStatementText } from '@/lib/domain/matching/statement-text'
import { formatMoney } from '@/lib/domain/money'
import { fail, ok, type Result } from '@/lib/domain/result'
import { amps, volts, watts } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import { aDemand, aTest, aTube, EVEN, readTube, someLimits } from './tubes'

const US: MatchingFormat = { words: wordsFor('US'), formatMoney: (amount) => formatMoney(amount, 'USD', 'en-US') }

const band = (value: number, half: number) => ({ value, low: value - half, high: value + half })

/** mA, mA/V, and halves of 95 % bands in mA. */
const idles = (milliamps: number, slope: number, half = 2, byReadings = 1, plateWatts = 18): PredictedTube => ({
  plateCurrent: band(milliamps / 1000, half / 1000),
  byReadings: amps(byReadings / 1000),
  transconductance: band(slope / 1000, 0.0002),
  plateDissipation: band(plateWatts, 1),
  extrapolated: false,
})

type Stock = readonly (readonly [Candidate, PredictedTube | string | null])[]

function propose(stock: Stock, demand: Partial<SocketDemand> = {}, limits: Partial<MatchLimits> = {}) {
  const ofTube = new Map(
    stock.flatMap(([{ tubeId }, found]): [string, Result<PredictedTube, string>][] =>
      found === null ? [] : [[tubeId, typeof found === 'string' ? fail(found) : ok(found)]],
    ),
  )
  const predictions: Predictions = { readOn: '2031-05-19', ofTube }
  const tubes = stock.map(([tube]) => tube)
  return proposeSet(tubes, aDemand(2, demand), someLimits({ predictions, ...limits }))
}

const marksOf = (proposal: ReturnType<typeof propose>) => proposal.best?.tubes.map(({ candidate }) => candidate.mark)
const statementOf = ({ best }: ReturnType<typeof propose>) => {
  if (!best) throw new Error('No set')
  return matchStatement(best, USUAL_YARDSTICKS, '2031-05-19')
}

const elsewhere = aTest({
  instrument: 'Bench tester 2',
  testPoint: { plateVoltage: volts(400), screenVoltage: volts(400), gridVoltage: volts(-36) },
})

describe('matched where they will work', () => {
  it('70 and 70 mA at the test point idle at 40 and 48 mA: 70 with 74, which idle at 40 and 41 mA, are the pair', () => {
    const stock: Stock = [
      [readTube('A', 70, 6), idles(40, 4)],
      [readTube('B', 70, 6), idles(48, 4)],
      [readTube('C', 74, 6), idles(41, 4)],
    ]
    const proposal = propose(stock)
    expect(marksOf(proposal)).toEqual(['A', 'C'])
    expect(proposal.best?.predicted).toBe(true)
    expect(proposal.best?.spreads.plateCurrent).toBeCloseTo(0.001, 9)
  })

  it('tubes of two instruments and test points compare, with their whole bands as the doubt', () => {
    const apart = propose([
      [readTube('A', 70, 6), idles(40, 4, 3)],
      [aTube('B', { test: elsewhere }), idles(41, 4, 3)],
    ])
    // √2 · 3 mA and 1 mA apart: 5.24 mA, beyond 5 mA.
    expect(apart.best?.doubt).toBeCloseTo(Math.SQRT2 * 0.003, 9)
    expect(apart.best?.match).toBe('uncertain')
  })

  it('tested alike, a quarter of what the readings leave is the doubt: √2 · ¼ · 4 mA = 1.41 mA', () => {
    const at = (second: number) =>
      propose([
        [readTube('A', 70, 6), idles(40, 4, 9, 4)],
        [readTube('B', 71, 6), idles(second, 4, 9, 4)],
      ]).best
    expect(at(43.58)?.doubt).toBeCloseTo(Math.SQRT2 * 0.001, 9)
    expect([at(43.58)?.match, at(43.6)?.match, at(45.1)?.match]).toEqual(['both', 'uncertain', 'outside'])
  })

  it('one that could not be predicted is listed with the reason; one without a test as untested', () => {
    const proposal = propose([
      [readTube('A', 70, 6), idles(40, 4)],
      [readTube('B', 70, 6), idles(40, 4)],
      [readTube('C', 70, 6), 'No curves of the type are known.'],
      [readTube('D', 70, 6), null],
      [aTube('E', { test: null }), null],
    ])
    expect(marksOf(proposal)).toEqual(['A', 'B'])
    const reasons = proposal.excluded.map(({ reasons: [reason] }) => reason)
    expect(reasons.map((reason) => reason?.code)).toEqual(['cannot-say', 'cannot-say', 'untested'])
    expect(reasons[0] && exclusionText(reasons[0], US)).toBe(
      'Cannot say what it would do here: No curves of the type are known.',
    )
  })

  it('one designation keeps variants apart; else they mix and it is said', () => {
    const stock: Stock = [
      [readTube('A', 70, 6), idles(40, 4)],
      [{ ...readTube('B', 70, 6), designation: '6L6GB' }, idles(40, 4)],
      [readTube('C', 70, 6), idles(41, 4)],
    ]
    expect(propose(stock).best?.cautions).toEqual([{ code: 'mixed-designations', designations: ['6L6GB', '6L6GC'] }])
    expect(marksOf(propose(stock, {}, { oneDesignation: true }))).toEqual(['A', 'C'])
  })

  it('figures well outside the printed rows are a caution with the marks', () => {
    const stock: Stock = [
      [readTube('A', 70, 6), { ...idles(40, 4), extrapolated: true }],
      [readTube('B', 70, 6), idles(40, 4)],
    ]
    expect(propose(stock).best?.cautions).toEqual([{ code: 'extrapolated', marks: ['A'] }])
    expect(propose(stock).unsafe).toEqual([
      { code: 'voltage-near-rating', tubes: 2 },
      { code: 'band-wide', tubes: 1 },
    ])
  })
})

describe('the aim where nothing trims the idle', () => {
  const stock: Stock = [
    [readTube('A', 70, 6), idles(30, 4)],
    [readTube('B', 70, 6), idles(30, 4)],
    [readTube('C', 75, 6), idles(45, 4)],
    [readTube('D', 75, 6), idles(46, 4)],
  ]
  const aimed = (aim: number) => propose(stock, { aim: amps(0.045) }, { weights: { ...EVEN, aim } })

  it('0 apart but three yardsticks off, against 0.2 apart and 0.1 off', () => {
    expect(marksOf(aimed(0))).toEqual(['A', 'B'])
    expect(marksOf(aimed(0.05))).toEqual(['A', 'B'])
    // 3 · 0.1 against 0.2 + 0.1 · 0.1
    expect(marksOf(aimed(0.1))).toEqual(['C', 'D'])
  })

  it('on cathode resistors a tube that would idle at 31 W of 30 W is left out; where it is trimmed it is not', () => {
    const hot: Stock = [
      [readTube('A', 70, 6), idles(70, 4, 2, 1, 31)],
      [readTube('B', 70, 6), idles(70, 4, 2, 1, 29)],
      [readTube('C', 70, 6), idles(70, 4, 2, 1, 30)],
    ]
    const cathode = propose(hot, { arrangement: 'cathode-shared', idlePlateDissipation: watts(40) })
    expect(marksOf(cathode)).toEqual(['B', 'C'])
    const [reason] = cathode.excluded[0]?.reasons ?? []
    expect(reason?.code).toBe('predicted-over-dissipation')
    expect(reason && exclusionText(reason, US)).toBe(
      'Would idle at 31 W on the plate, above the 30 W rating of the 6L6GC; nothing here trims it.',
    )
    expect(propose(hot).excluded).toEqual([])
  })

  it('when all would idle too hot, that is what to relax', () => {
    const hot: Stock = ['A', 'B'].map((mark) => [readTube(mark, 70, 6), idles(70, 4, 2, 1, 31)] as const)
    expect(propose(hot, { arrangement: 'cathode-separate' }).relax).toMatchObject([
      { limit: 'idle-dissipation', tubes: 2, sets: 1 },
    ])
  })
})

describe('what a predicted match says', () => {
  it('predicted in this amplifier, not measured: band, doubt of the difference, day of the readings, tests, tolerance', () => {
    const proposal = propose([
      [readTube('A', 70, 6), idles(40, 4, 2, 2)],
      [readTube('B', 71, 6.1), idles(40.04, 4.1, 3, 2)],
    ])
    expect(matchStatementText(statementOf(proposal), US)).toBe(
      'Predicted idle in this amplifier, not measured: 40 mA of plate current, known to ±3 mA, their differences to ±0.7 mA (95 %), in the circuit as read on May 19, 2031. Tested on May 1, 2031 on Bench tester 1. Less than 0.1 mA apart, 2.5 % in transconductance. Matched within 5 mA and 10 %. A match is void without these.',
    )
  })

  it('what is uncertain claims no match', () => {
    const proposal = propose([
      [readTube('A', 70, 6), idles(40, 4, 5)],
      [aTube('B', { test: elsewhere }), idles(42, 4, 5)],
    ])
    const text = matchStatementText(statementOf(proposal), US)
    expect(text).toMatch(/on Bench tester 1 and Bench tester 2\. 2 mA apart/)
    expect(text).toMatch(
      /Uncertain: within 5 mA and 10 % as predicted, but the difference is not known well enough to call it matched\.$/,
    )
  })

  it('one alone has no difference', () => {
    const proposal = propose([[readTube('A', 70, 6), idles(40, 4)]], { count: 1, pushPull: false })
    expect(testStatementText(statementOf(proposal), US)).toBe(
      'Predicted idle in this amplifier, not measured: 40 mA of plate current, known to ±2 mA (95 %), in the circuit as read on May 19, 2031. Tested on May 1, 2031 on Bench tester 1.',
    )
  })
})
