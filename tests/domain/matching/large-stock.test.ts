import { describe, expect, it } from 'vitest'
import type { Candidate } from '@/lib/domain/matching/candidate'
import type { SetOption } from '@/lib/domain/matching/proposal'
import { proposeSet } from '@/lib/domain/matching/propose-set'
import { money } from '@/lib/domain/money'
import { byCloseness, type Judged, judge, subsets } from './brute-force'
import { aDemand, generator, randomStock, readTube, someLimits } from './tubes'

const FINE = { size: 2000, currentStep: 0.001, slopeStep: 0.001, priceStep: 1 }
const BENCH = { size: 2000, currentStep: 0.1, slopeStep: 0.05, priceStep: 100 }

const noWorse = (a: Judged, b: Judged): boolean => a.top * b.bottom <= b.top * a.bottom

/**
 * Every set that scores no worse than `bound`, found as groups of tubes in
 * which each pair scores no worse: a set never scores below any pair of it.
 * Rests on nothing in the program but the score `bound` it claims.
 */
function allSetsWithin(stock: readonly Candidate[], count: number, bound: Judged): Judged[] {
  const later = stock.map((tube, place) =>
    stock.flatMap((other, otherPlace) =>
      otherPlace > place && noWorse(judge([tube, other]), bound) ? [otherPlace] : [],
    ),
  )
  const sets: Judged[] = []
  const extend = (chosen: readonly number[], open: readonly number[]): void => {
    if (chosen.length === count) {
      const judged = judge(chosen.map((place) => stock[place] as Candidate))
      if (noWorse(judged, bound)) sets.push(judged)
      return
    }
    for (const place of open) {
      const near = new Set(later[place])
      extend(
        [...chosen, place],
        open.filter((other) => near.has(other)),
      )
    }
  }
  extend([], [...stock.keys()])
  return sets
}

const tubesOf = (option: SetOption | null) => option?.tubes.map((tube) => tube.candidate) ?? []

describe('2,000 tubes', () => {
  for (const [name, shape] of [
    ['readings to 0.001 mA', FINE],
    ['readings to 0.1 mA', BENCH],
  ] as const) {
    it(`${name}: the pair is the best of all 1 999 000`, () => {
      const stock = randomStock(generator(2), shape)
      const told = judge(tubesOf(proposeSet(stock, aDemand(2), someLimits()).closest))
      let best: Judged | null = null
      for (const pair of subsets(stock, 2)) {
        // Judging two million pairs in whole numbers is slow; those 2 mA apart already score 0.4, far above any best pair here.
        const [a, b] = pair.map((tube) => tube.test?.plateCurrent ?? Number.NaN) as [number, number]
        if (Math.abs(a - b) > 0.002) continue
        const judged = judge(pair)
        if (!best || byCloseness(judged, best) < 0) best = judged
      }
      expect(Number(told.top) / Number(told.bottom)).toBeLessThan(0.4)
      expect(told.marks).toEqual(best?.marks)
    }, 60_000)

    it(`${name}: no quad is closer than the one proposed, and it wins all ties`, () => {
      const stock = randomStock(generator(4), shape)
      const told = judge(tubesOf(proposeSet(stock, aDemand(4), someLimits()).closest))
      const rivals = allSetsWithin(stock, 4, told).sort(byCloseness)
      expect(rivals.length).toBeGreaterThan(0)
      expect(rivals[0]?.marks).toEqual(told.marks)
    }, 60_000)
  }

  it('six under a price limit: no affordable set is closer', () => {
    const stock = randomStock(generator(6), BENCH)
    const priceCap = money(27_000)
    const told = judge(tubesOf(proposeSet(stock, aDemand(6), someLimits({ priceCap })).closest))
    const rivals = allSetsWithin(stock, 6, told).filter((set) => set.price <= priceCap)
    expect(rivals.sort(byCloseness)[0]?.marks).toEqual(told.marks)
  }, 60_000)

  it('a thousand tubes with one and the same reading give the cheapest of them, earliest marks first', () => {
    const random = generator(1)
    const stock = Array.from({ length: 1000 }, (_, place) =>
      readTube(`M-${place + 1}`, 70, 6, 3000 + 500 * Math.floor(random() * 8)),
    )
    const told = judge(tubesOf(proposeSet(stock, aDemand(8), someLimits()).closest))
    const cheapest = stock.filter((tube) => tube.price === Math.min(...stock.map((each) => each.price)))
    expect(cheapest.length).toBeGreaterThan(8)
    expect(told.marks).toEqual(cheapest.slice(0, 8).map((tube) => tube.mark))
  })
})
