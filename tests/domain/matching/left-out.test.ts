/** Why tubes stand in no set, told of a long stock in the short way: against asking each of them, and counting by hand. */
import { describe, expect, it } from 'vitest'
import type { Candidate, MatchLimits } from '@/lib/domain/matching/candidate'
import { exclusionReasons } from '@/lib/domain/matching/eligibility'
import { toldOf } from '@/lib/domain/matching/left-out'
import { leftOutText } from '@/lib/domain/matching/left-out-text'
import type { PredictedTube } from '@/lib/domain/matching/predicted-tube'
import type { ExclusionCode, Proposal } from '@/lib/domain/matching/proposal'
import { proposeSet } from '@/lib/domain/matching/propose-set'
import { money } from '@/lib/domain/money'
import { fail, ok, type Result } from '@/lib/domain/result'
import { amps, siemens, volts, watts } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import { aDemand, aTest, aTube, generator, someLimits } from './tubes'

type Random = () => number

const pick = <T>(random: Random, of: readonly T[]): T => of[Math.floor(random() * of.length)] as T

/** Most have one or two things against them, of every kind there is. */
function faultyTube(random: Random, mark: string): Candidate {
  const test = aTest({
    testedAt: pick(random, ['2031-05-01', '2031-05-01', '2030-01-02', '2031-05-21', '2031-06-30']),
    plateCurrent: amps(pick(random, [0.07, 0.072, 0.074, 0])),
    transconductance: pick(random, [siemens(0.006), siemens(0.0061), siemens(0), null]),
    shorts: random() < 0.1,
    instrument: pick(random, ['Bench tester 1', 'Bench tester 1', 'Bench tester 2']),
  })
  const plateVolts = pick(random, [500, 500, 400])
  return aTube(mark, {
    family: pick(random, ['6L6', '6L6', '6L6', 'EL34']),
    base: pick(random, ['octal', 'octal', 'octal', 'noval']),
    condition: pick(random, ['used-tested', 'used-tested', 'reject']),
    ratings: { maxPlateVoltage: volts(plateVolts), maxScreenVoltage: volts(450), maxPlateDissipation: watts(25) },
    price: money(pick(random, [3000, 4000, 20_000])),
    test: random() < 0.1 ? null : test,
    state: pick(random, [
      { kind: 'free' },
      { kind: 'free' },
      { kind: 'free' },
      { kind: 'reserved', holder: 'job 7' },
      { kind: 'fitted', place: 'V1' },
    ] as const),
  })
}

function predicted(random: Random): Result<PredictedTube, string> {
  if (random() < 0.2) return fail('Its type has no printed curve.')
  const band = (value: number) => ({ value, low: 0.9 * value, high: 1.1 * value })
  const power = pick(random, [12, 18, 25, 25.0004, 25.001, 31])
  return ok({
    plateCurrent: band(0.035),
    byReadings: amps(0.001),
    transconductance: band(0.004),
    plateDissipation: band(power),
    extrapolated: false,
  })
}

function counted(codes: readonly (readonly ExclusionCode[])[]): Map<ExclusionCode, number> {
  const counts = new Map<ExclusionCode, number>()
  for (const code of codes.flat()) counts.set(code, (counts.get(code) ?? 0) + 1)
  return counts
}

const codesOf = ({ excluded }: Pick<Proposal, 'excluded'>) =>
  excluded.map(({ reasons }) => reasons.map(({ code }) => code))

describe('300 stocks of faulty tubes', () => {
  const random = generator(20_311_125)
  const cases = Array.from({ length: 300 }, (_, nth) => {
    const stock = Array.from({ length: 40 }, (_, at) => faultyTube(random, `T-${at + 1}`))
    const asked = pick(random, [{}, { maximumTestAgeDays: null }, { priceCap: money(9000) }, { oneDesignation: true }])
    const ofTube = new Map(stock.filter(({ test }) => test).map(({ tubeId }) => [tubeId, predicted(random)]))
    const predictions = nth % 2 === 0 ? { predictions: { readOn: '2031-05-01', ofTube } } : {}
    const limits: MatchLimits = someLimits({ ...asked, ...predictions })
    const demand = aDemand(2, { arrangement: pick(random, ['one-trim', 'cathode-shared']) })
    return { stock, limits, demand, proposal: proposeSet(stock, demand, limits) }
  })

  it('each is left out for the very reasons that asking it alone gives', () => {
    for (const { stock, limits, demand, proposal } of cases) {
      const told = new Map(proposal.excluded.map(({ candidate, reasons }) => [candidate.mark, reasons]))
      for (const tube of stock) {
        const reasons = exclusionReasons(tube, demand, limits)
        if (reasons.length > 0) expect(told.get(tube.mark), tube.mark).toEqual(reasons)
      }
    }
    const met = new Set(cases.flatMap(({ proposal }) => codesOf(proposal).flat()))
    // Every reason a stock of one family can give, or the stocks above would not try them.
    expect([...met].sort()).toEqual(
      [
        ...['cannot-say', 'condition-reject', 'dead', 'fitted', 'other-instrument', 'over-price-cap'],
        ...['plate-voltage-over-rating', 'predicted-over-dissipation', 'reserved', 'shorted', 'test-in-future'],
        ...['test-too-old', 'transconductance-differs', 'untested', 'wrong-base', 'wrong-type'],
      ].sort(),
    )
  })

  it('counts every reason of all of them', () => {
    for (const { proposal } of cases) {
      expect(proposal.leftOut.tubes).toBe(proposal.excluded.length)
      expect(new Map(proposal.leftOut.byReason.map(({ code, tubes }) => [code, tubes]))).toEqual(
        counted(codesOf(proposal)),
      )
      const counts = proposal.leftOut.byReason.map(({ tubes }) => tubes)
      expect(counts).toEqual(counts.toSorted((a, b) => b - a))
    }
  })

  it('lists as many as were asked for, and counts the others all the same', () => {
    for (const { stock, demand, limits, proposal } of cases) {
      const short = proposeSet(stock, demand, limits, 3)
      expect(short).toEqual({ ...proposal, excluded: proposal.excluded.slice(0, 3) })
      expect(toldOf(proposal.excluded, 3)).toEqual({ excluded: short.excluded, leftOut: short.leftOut })
    }
  })
})

it('is told in bench words, the most first', () => {
  const byReason = [
    { code: 'test-too-old', tubes: 17_000 },
    { code: 'plate-voltage-over-rating', tubes: 12 },
  ] as const
  const text = (words: 'US' | 'UK') => leftOutText({ tubes: 17_010, byReason }, wordsFor(words))
  expect(text('US')).toBe('17000 tested too long ago, 12 rated below the plate voltage here')
  expect(text('UK')).toBe('17000 tested too long ago, 12 rated below the anode voltage here')
})
