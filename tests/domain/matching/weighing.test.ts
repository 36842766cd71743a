import { describe, expect, it } from 'vitest'
import type { Candidate } from '@/lib/domain/matching/candidate'
import { hasSides, SET_ARRANGEMENTS, USUAL_WEIGHTS } from '@/lib/domain/matching/match-weights'
import { arrangementName, arrangementReason, weightText } from '@/lib/domain/matching/match-weights-text'
import { sidesText } from '@/lib/domain/matching/matching-text'
import type { SetOption } from '@/lib/domain/matching/proposal'
import { proposeSet } from '@/lib/domain/matching/propose-set'
import { marginText, safeMarginsText } from '@/lib/domain/matching/safe-margins-text'
import { money } from '@/lib/domain/money'
import { volts, watts } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import { replaceOne } from '@/tests/domain/matching/replacing/replace-one'
import { aDemand, aTest, aTube, EVEN, readTube, someLimits } from './tubes'

const marks = (option: SetOption | null) => option?.tubes.map(({ candidate }) => candidate.mark)

const pairOf = (stock: readonly Candidate[], weights: Partial<typeof EVEN>) =>
  proposeSet(stock, aDemand(2), someLimits({ weights: { ...EVEN, price: 0, ...weights } }))

describe('what a weight does, by hand', () => {
  const close = [readTube('C-1', 70, 6, 8000), readTube('C-2', 70.5, 6, 8000)]
  const cheap = [readTube('D-1', 72, 6, 4000), readTube('D-2', 73.5, 6, 4000)]

  it('0.1 against 0.3 yardsticks; a price weight of 0.5 adds 0.5 and 0.25: the dearer pair still wins', () => {
    // Median price 80.00: the pairs cost one and a half of it.
    expect(marks(pairOf([...close, ...cheap], { price: 0.3 }).best)).toEqual(['C-1', 'C-2'])
    expect(marks(pairOf([...close, ...cheap], { price: 0.5 }).best)).toEqual(['D-1', 'D-2'])
    expect(marks(pairOf([...close, ...cheap], { price: 0.5 }).closest)).toEqual(['C-1', 'C-2'])
  })

  it('a pair that takes two of two of its variant counts one, two of four one half', () => {
    const rare = [...close].map((tube) => ({ ...tube, designation: '6L6WGB' }))
    const common = ['E-1', 'E-2', 'E-3', 'E-4'].map((mark, at) => readTube(mark, 60 + 1.5 * at, 6, 8000))
    expect(marks(pairOf([...rare, ...common], { rarity: 0.3 }).best)).toEqual(['C-1', 'C-2'])
    // 0.1 + 0.5 · 1 against 0.3 + 0.5 · 0.5
    expect(marks(pairOf([...rare, ...common], { rarity: 0.5 }).best)).toEqual(['E-1', 'E-2'])
  })

  it('tests of a year ago against fresh ones at 1 per year: 0.1 + 1 against 0.3', () => {
    const old = close.map((tube) => ({ ...tube, test: tube.test && { ...tube.test, testedAt: '2030-05-20' } }))
    expect(marks(pairOf([...old, ...cheap], { age: 1 }).best)).toEqual(['D-1', 'D-2'])
    expect(marks(pairOf([...old, ...cheap], { age: 0.1 }).best)).toEqual(['C-1', 'C-2'])
  })

  it('current alone, transconductance alone', () => {
    const stock = [readTube('A', 70, 6), readTube('B', 70, 6.5), readTube('C', 78, 6)]
    expect(marks(pairOf(stock, { slopeSpread: 0 }).best)).toEqual(['A', 'B'])
    expect(marks(pairOf(stock, { currentSpread: 0 }).best)).toEqual(['A', 'C'])
  })
})

describe('tubes in parallel on each side', () => {
  const stock = [70, 70, 70, 72, 72.5].map((current, at) => readTube(`Q-${at + 1}`, current, 6))
  const chosen = (weights: Partial<typeof EVEN>, over: Parameters<typeof aDemand>[1] = {}) =>
    proposeSet(stock, aDemand(4, over), someLimits({ weights: { ...EVEN, price: 0, ...weights } }))

  it('70, 70, 72, 72.5 mA, sides 0.5 mA apart, go before 70, 70, 70, 72, sides 2 mA apart: 0.5 + 0.1 against 0.4 + 0.4', () => {
    const { best, closest, leastPrice } = chosen({ sideDifference: 1 })
    expect(marks(best)).toEqual(['Q-1', 'Q-4', 'Q-2', 'Q-5'])
    expect(best?.arrangement?.difference).toBeCloseTo(0.0005, 9)
    expect(best && sidesText(best)).toBe('sides differ by 0.5 mA')
    expect(marks(closest)).toEqual(marks(best))
    // The cheapest set within the yardsticks: of equal prices the least spread, whatever its sides.
    expect(marks(leastPrice)).toEqual(['Q-1', 'Q-2', 'Q-3', 'Q-4'])
    expect(leastPrice && sidesText(leastPrice)).toBe('sides differ by 2 mA')
  })

  it('the sides weigh nothing at 0, nor single-ended, nor of a pair, whose difference is its spread', () => {
    expect(marks(chosen({ sideDifference: 0 }).best)).toEqual(['Q-1', 'Q-2', 'Q-3', 'Q-4'])
    expect(marks(chosen({ sideDifference: 1 }, { pushPull: false }).best)).toEqual(['Q-1', 'Q-2', 'Q-3', 'Q-4'])
    const pair = pairOf([readTube('A', 70, 6), readTube('B', 71, 6)], { sideDifference: 1 }).best
    expect(pair && sidesText(pair)).toBeNull()
  })

  it('the next sets weigh them too: the second of two quads is the balanced one of what is left', () => {
    const more = [...stock, ...[60, 60, 60, 62, 62.5].map((current, at) => readTube(`R-${at + 1}`, current, 6))]
    const limits = someLimits({ weights: { ...EVEN, price: 0, sideDifference: 1 } })
    const { best, next, leastPrice } = proposeSet(more, aDemand(4), limits)
    expect(marks(best)).toEqual(['Q-1', 'Q-4', 'Q-2', 'Q-5'])
    expect(marks(leastPrice)).toEqual(['Q-1', 'Q-2', 'Q-3', 'Q-4'])
    expect(marks(next[0] ?? null)).toEqual(['R-1', 'R-4', 'R-2', 'R-5'])
  })

  it('one tube for another: beside 70, 70 and 72 mA, 72.5 mA goes before 70 mA', () => {
    const [a, b, c, d, e] = stock as [Candidate, Candidate, Candidate, Candidate, Candidate]
    const ranked = (sideDifference: number) => {
      const limits = someLimits({ weights: { ...EVEN, price: 0, sideDifference } })
      const answer = replaceOne({ beside: [a, b, d], out: null, stock: [c, e] }, aDemand(4), limits)
      return answer.ok && answer.value.ranked.map(({ mark }) => mark)
    }
    expect(ranked(1)).toEqual(['Q-5', 'Q-3'])
    expect(ranked(0)).toEqual(['Q-3', 'Q-5'])
  })

  it('equal sides are said to be', () => {
    const even = [70, 71, 72, 73].map((current, at) => readTube(`S-${at + 1}`, current, 6))
    const { best } = proposeSet(even, aDemand(4), someLimits())
    expect(best && sidesText(best)).toBe('sides are equal')
  })
})

describe('the usual weights', () => {
  it('an adjustment for each tube turns the order round: of 1 mA and 5 % against 4 mA and 0.5 %', () => {
    const stock = [readTube('A-1', 60, 6), readTube('A-2', 61, 6.3), readTube('B-1', 80, 6), readTube('B-2', 84, 6.03)]
    const best = (arrangement: (typeof SET_ARRANGEMENTS)[number]) =>
      marks(
        proposeSet(stock, aDemand(2, { arrangement }), { ...someLimits(), weights: USUAL_WEIGHTS[arrangement] }).best,
      )
    // One trim: 0.2 + 0.25 against 0.8 + 0.025. Own trims: 0.04 + 0.5 against 0.16 + 0.05.
    expect(best('one-trim')).toEqual(['A-1', 'A-2'])
    expect(best('individual-trims')).toEqual(['B-1', 'B-2'])
  })

  it('are whole thousandths, weigh a spread each, and the aim only where nothing trims it', () => {
    for (const arrangement of SET_ARRANGEMENTS) {
      const weights = USUAL_WEIGHTS[arrangement]
      for (const value of Object.values(weights)) expect(Math.round(1000 * value) / 1000).toBe(value)
      expect(Math.max(weights.currentSpread, weights.slopeSpread)).toBeGreaterThan(0)
      expect(weights.sideDifference > 0).toBe(hasSides(arrangement))
      expect(weights.aim > 0).toBe(!['one-trim', 'individual-trims', 'parallel-pairs'].includes(arrangement))
    }
  })

  it('each has a name and a reason, in the words of the shop', () => {
    const uk = wordsFor('UK')
    for (const arrangement of SET_ARRANGEMENTS) {
      expect(arrangementName(arrangement, uk)).toMatch(/^(Push-pull|Single-ended)/)
      expect(`${arrangementName(arrangement, uk)} ${arrangementReason(arrangement, uk)}`).not.toMatch(/tube|plate/)
    }
    const texts = (Object.keys(EVEN) as (keyof typeof EVEN)[]).map((weight) => weightText(weight, uk))
    expect(new Set(texts.map(({ name }) => name)).size).toBe(8)
    expect(texts.map(({ reason, name }) => `${name} ${reason}`).join(' ')).not.toMatch(/tube|plate/i)
  })
})

describe('safe working', () => {
  const sound = {
    ratings: { maxPlateVoltage: volts(500), maxScreenVoltage: volts(500), maxPlateDissipation: watts(30) },
  }
  const demand = aDemand(2, {
    plateToCathodeVoltage: volts(450),
    screenVoltage: volts(450),
    idlePlateDissipation: watts(27),
  })
  const safeOf = (over: Partial<Candidate>) =>
    proposeSet([aTube('A', { ...sound, ...over }), aTube('B', sound)], demand, someLimits({ maximumTestAgeDays: null }))

  it('450 V of 500 V and 27 W of 30 W are 90 %: within', () => {
    const { best, safe, unsafe } = safeOf({})
    expect(safe?.key).toBe(best?.key)
    expect(unsafe).toEqual([])
  })

  it.each([
    ['voltage-near-rating', { ratings: { ...sound.ratings, maxPlateVoltage: volts(499) } }],
    ['dissipation-near-rating', { ratings: { ...sound.ratings, maxPlateDissipation: watts(29.9) } }],
    ['rating-not-sure', { ratings: { ...sound.ratings, maxScreenVoltage: null } }],
    ['rating-not-sure', { ratings: { ...sound.ratings, standsIn: '6L6GC' } }],
    ['test-not-fresh', { test: aTest({ testedAt: '2030-11-17' }) }],
    ['test-noted-fault', { test: aTest({ leakageNote: 'slight gas' }) }],
    ['condition-not-sure', { condition: 'pull' }],
  ] as const)('%s: it may go in, but is not called safe, and the reason is counted', (code, over) => {
    const { best, safe, unsafe } = safeOf(over)
    expect(best).not.toBeNull()
    expect(safe).toBeNull()
    expect(unsafe).toEqual([{ code, tubes: 1 }])
    expect(marginText(code, wordsFor('US')).length).toBeGreaterThan(10)
  })

  it('183 days are fresh, 184 are not', () => {
    expect(safeOf({ test: aTest({ testedAt: '2030-11-18' }) }).safe).not.toBeNull()
    expect(safeMarginsText(wordsFor('US'))).toContain('183 days')
  })

  it('a dearer safe set is shown beside the best one with what it loses', () => {
    const stock = [
      readTube('A', 70, 6, 3000),
      readTube('B', 70, 6, 3000),
      ...['S-1', 'S-2'].map((mark, at) => ({ ...readTube(mark, 70 + at, 6, 4000), ...sound })),
    ]
    const { best, safe } = proposeSet(stock, demand, someLimits({ allowOverPrintedRating: true }))
    expect([marks(best), marks(safe)]).toEqual([
      ['A', 'B'],
      ['S-1', 'S-2'],
    ])
    expect(safe?.lost).toEqual({ plateCurrent: 0.001, transconductance: 0, price: money(2000) })
  })
})
