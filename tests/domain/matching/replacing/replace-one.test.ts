import { describe, expect, it } from 'vitest'
import type { Candidate } from '@/lib/domain/matching/candidate'
import { proposeSet } from '@/lib/domain/matching/propose-set'
import { money } from '@/lib/domain/money'
import { volts } from '@/lib/domain/units'
import { replaceOne } from '@/tests/domain/matching/replacing/replace-one'
import {
  aDemand,
  aTest,
  aTube,
  generator,
  randomStock,
  readTube,
  shuffled,
  someLimits,
} from '@/tests/domain/matching/tubes'

const replaced = (
  beside: readonly Candidate[],
  out: Candidate | null,
  stock: readonly Candidate[],
  limits: Parameters<typeof someLimits>[0] = {},
) => replaceOne({ beside, out, stock }, aDemand(beside.length + 1), someLimits(limits))

function ranked(...given: Parameters<typeof replaced>): string[] {
  const answer = replaced(...given)
  if (!answer.ok) throw new Error(answer.fault.code)
  return answer.value.ranked.map(({ mark }) => mark)
}

describe('one tube for another, the rest staying', () => {
  const stays = readTube('A', 70, 6)
  const goes = readTube('B', 74, 6)

  it('beside 70 mA: 71 mA comes before 68 mA and 74.5 mA, whatever the order of the stock', () => {
    const stock = [readTube('C', 68, 6), readTube('D', 74.5, 6), readTube('E', 71, 6)]
    expect(ranked([stays], goes, stock)).toEqual(['E', 'C', 'D'])
    expect(ranked([stays], goes, [...stock].reverse())).toEqual(['E', 'C', 'D'])
  })

  it('what counts is the whole set: beside 66 and 74 mA all from 66 to 74 mA lose nothing, so the cheaper goes first', () => {
    const beside = [readTube('A', 66, 6), readTube('B', 74, 6)]
    const stock = [readTube('C', 70, 6, 5000), readTube('D', 73, 6, 3000), readTube('E', 75, 6, 1000)]
    expect(ranked(beside, null, stock)).toEqual(['D', 'C', 'E'])
  })

  it('tells the set as it is and what it would be: 4 mA apart now, 1 mA then, $10.00 dearer', () => {
    const answer = replaced([stays], goes, [readTube('E', 71, 6, 5000)])
    if (!answer.ok) throw new Error(answer.fault.code)
    const { now, setWith } = answer.value
    expect(now?.spreads.plateCurrent).toBeCloseTo(0.004, 9)
    expect(now?.lost).toBeNull()
    const then = setWith('id-E')
    expect(then?.spreads.plateCurrent).toBeCloseTo(0.001, 9)
    expect(then?.lost).toEqual({ plateCurrent: expect.closeTo(-0.003, 9), transconductance: 0, price: money(1000) })
    expect(setWith('id-nobody')).toBeNull()
  })

  it('neither the tubes that stay nor the one that goes are offered, nor one that may not stand there', () => {
    const stock = [
      stays,
      goes,
      readTube('C', 70, 6),
      aTube('D', { state: { kind: 'reserved', holder: 'job 1001-2' } }),
      aTube('E', { test: null }),
      aTube('F', { family: 'EL34' }),
      aTube('G', { condition: 'reject' }),
    ]
    expect(ranked([stays], goes, stock)).toEqual(['C'])
  })

  it('one that stays although it is fitted, held or old is not judged anew', () => {
    const fitted = { ...stays, state: { kind: 'fitted', place: 'an amplifier' } } as const
    expect(ranked([fitted], goes, [readTube('C', 70, 6)])).toEqual(['C'])
  })

  it('alone in its group nothing is apart, so the cheapest goes first', () => {
    expect(ranked([], goes, [readTube('C', 60, 6, 5000), readTube('D', 90, 6, 3000)])).toEqual(['D', 'C'])
  })

  it('read elsewhere it does not compare: it is not ranked, and no set is told with it', () => {
    const apart = aTest({ instrument: 'Bench tester 2' })
    const answer = replaced([stays], aTube('B', { test: apart }), [readTube('C', 70, 6), aTube('D', { test: apart })])
    if (!answer.ok) throw new Error(answer.fault.code)
    expect(answer.value.ranked.map(({ mark }) => mark)).toEqual(['C'])
    expect(answer.value.now).toBeNull()
    expect(answer.value.setWith('id-D')).toBeNull()
  })

  it('cannot say where the tubes that stay do not compare with each other, naming them', () => {
    const testPoint = { plateVoltage: volts(300), screenVoltage: volts(250), gridVoltage: volts(-14) }
    const other = aTube('B', { test: aTest({ testPoint }) })
    expect(replaced([stays, other], null, [readTube('C', 70, 6)])).toEqual({
      ok: false,
      fault: { code: 'beside-not-comparable', marks: ['A', 'B'] },
    })
    expect(replaced([stays, aTube('B', { test: null })], null, [])).toEqual({
      ok: false,
      fault: { code: 'beside-not-tested', marks: ['B'] },
    })
    const predictions = { readOn: '2031-05-19', ofTube: new Map() }
    expect(replaced([stays], null, [], { predictions })).toEqual({
      ok: false,
      fault: { code: 'beside-not-predicted', marks: ['A'] },
    })
  })
})

describe('against the exact search for whole sets', () => {
  it('400 stocks: whichever tube of the best set is taken out, the best replacement is that tube again', () => {
    const random = generator(41)
    const shapes = [
      { currentStep: 0.001, slopeStep: 0.001, priceStep: 1 },
      { currentStep: 2, slopeStep: 0.25, priceStep: 1000 },
    ]
    for (let round = 0; round < 200; round += 1) {
      for (const shape of shapes) {
        const count = 2 + (round % 3)
        const stock = shuffled(randomStock(random, { size: 12, ...shape }), random)
        const { best } = proposeSet(stock, aDemand(count), someLimits())
        if (!best) throw new Error('no set')
        for (const { candidate } of best.tubes) {
          const beside = best.tubes.flatMap((each) => (each.candidate === candidate ? [] : [each.candidate]))
          expect(ranked(beside, null, stock)[0]).toBe(candidate.mark)
        }
      }
    }
  })

  it('100 stocks: the set with one tube is what the search makes of those very four, and along the order spread rises', () => {
    const random = generator(7)
    for (let round = 0; round < 100; round += 1) {
      const stock = randomStock(random, { size: 9, currentStep: 0.5, slopeStep: 0.1, priceStep: 500 })
      const beside = stock.slice(0, 3)
      const answer = replaced(beside, null, stock)
      if (!answer.ok) throw new Error(answer.fault.code)
      const { best } = proposeSet([...beside, ...stock.slice(3, 4)], aDemand(4), someLimits())
      const alone = answer.value.setWith((stock[3] as Candidate).tubeId)
      expect([alone?.spreads, alone?.price, alone?.match]).toEqual([best?.spreads, best?.price, best?.match])
      const scores = answer.value.ranked.map(({ tubeId }) => answer.value.setWith(tubeId)?.score ?? 0)
      // Price weighs a hundredth of a yardstick at its median here, and is rounded to points.
      for (const [at, score] of scores.entries()) expect(score).toBeGreaterThanOrEqual((scores[at - 1] ?? 0) - 0.05)
    }
  })
})
