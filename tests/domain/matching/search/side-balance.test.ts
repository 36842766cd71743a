import { describe, expect, it } from 'vitest'
import { difference, evenSplit } from '@/lib/domain/matching/arrangement'
import { bestSet, type SetQuery } from '@/lib/domain/matching/search/best-set'
import { setIndex } from '@/lib/domain/matching/search/set-index'
import { leastDifference } from '@/lib/domain/matching/search/side-balance'
import { generator } from '../tubes'
import { asJudged, bestOfEvery } from './every-set'
import { pick, randomPoints, SHAPES } from './random-points'

function randomQuery(random: () => number, count: number, size: number): SetQuery {
  const scale = {
    xYard: 5000,
    yYard: 1000,
    xWeight: pick([1000, 800, 200, 0], random),
    yWeight: pick([1000, 500], random),
  }
  const adjustments = Float64Array.from({ length: size }, () => Math.floor((random() - 0.3) * 1_000_000))
  const excluded = Uint8Array.from({ length: size }, () => (random() < 0.15 ? 1 : 0))
  return {
    count,
    scale,
    balance: { yard: pick([5000, 700, 1], random), weight: pick([1000, 200, 5000, 1], random) },
    ...(random() < 0.3 ? { adjustments } : {}),
    ...(random() < 0.3 ? { excluded } : {}),
    ...(random() < 0.3 ? { priceCap: count * (3500 + Math.floor(random() * 3000)) } : {}),
    ...(random() < 0.2 ? { xLimit: Math.floor(random() * 40_000) } : {}),
  }
}

describe('with the difference of the sides the best set is that of looking at every set and every split', () => {
  for (const [count, cases, largest] of [
    [2, 200, 20],
    [4, 700, 15],
    [6, 600, 12],
    [8, 200, 11],
  ] as const) {
    it(`${cases} random cases of up to ${largest} tubes, sets of ${count}, ties included`, () => {
      let [found, moved] = [0, 0]
      for (let seed = 0; seed < cases; seed += 1) {
        const random = generator(seed * 17 + count)
        const size = count + Math.floor(random() * (largest - count + 1))
        const points = randomPoints(random, { size, ...pick(SHAPES, random) })
        const query = randomQuery(random, count, size)
        const wanted = bestOfEvery(points, query)
        const index = setIndex(points)
        const best = bestSet(index, query)
        expect({ seed, best: asJudged(best) }).toEqual({ seed, best: wanted })
        if (!best) continue
        found += 1
        expect(best.objective).toBe(best.spread + best.cost + (best.balance ?? 0) + adjustedBy(query, best.places))
        const { balance: _, ...unbalanced } = query
        if (bestSet(index, unbalanced)?.places.join() !== best.places.join()) moved += 1
      }
      expect(found).toBeGreaterThan(cases / 2)
      // Or the balance would decide nothing, and nothing be tested.
      expect(moved).toBeGreaterThan(cases / 20)
    })
  }
})

const adjustedBy = ({ adjustments }: SetQuery, places: readonly number[]): number =>
  adjustments ? places.reduce((sum, place) => sum + (adjustments[place] as number), 0) : 0

describe('by hand', () => {
  const points = {
    x: Int32Array.of(70_000, 70_000, 70_000, 72_000, 72_500),
    y: Int32Array.of(6000, 6000, 6000, 6000, 6000),
    cost: new Int32Array(5),
    price: new Int32Array(5),
  }
  const scale = { xYard: 5000, yYard: 1000, xWeight: 1000, yWeight: 1000 }

  it('70, 70, 70, 72 mA lie 2 mA apart and so do their sides; 70, 70, 72, 72.5 lie 2.5 mA apart, their sides 0.5', () => {
    const index = setIndex(points)
    expect(bestSet(index, { count: 4, scale })?.places).toEqual([0, 1, 2, 3])
    // 0.4 + 0.4 against 0.5 + 0.1 yardsticks.
    const best = bestSet(index, { count: 4, scale, balance: { yard: 5000, weight: 1000 } })
    expect(best).toMatchObject({ places: [0, 1, 3, 4], objective: 600_000, spread: 500_000, balance: 100_000 })
  })

  it('at a weight of a quarter 0.4 + 0.1 against 0.5 + 0.025: the closer set stays', () => {
    const best = bestSet(setIndex(points), { count: 4, scale, balance: { yard: 5000, weight: 250 } })
    expect(best).toMatchObject({ places: [0, 1, 2, 3], objective: 500_000, balance: 100_000 })
  })

  it('were the last at 73 mA, 0.6 + 0.2 against 0.4 + 0.4: of two that count as much the earlier marks', () => {
    const x = Int32Array.of(70_000, 70_000, 70_000, 72_000, 73_000)
    const best = bestSet(setIndex({ ...points, x }), { count: 4, scale, balance: { yard: 5000, weight: 1000 } })
    expect(best).toMatchObject({ places: [0, 1, 2, 3], objective: 800_000, balance: 400_000 })
    const turned = { ...points, x: x.slice().reverse() }
    const other = bestSet(setIndex(turned), { count: 4, scale, balance: { yard: 5000, weight: 1000 } })
    expect(other).toMatchObject({ places: [0, 1, 2, 3], objective: 800_000, balance: 200_000 })
  })

  it('three tubes have no sides of equal number', () => {
    expect(() => bestSet(setIndex(points), { count: 3, scale, balance: { yard: 5000, weight: 1000 } })).toThrow(
      '3 tubes have no sides',
    )
  })
})

it('the difference that weighs is that of the sides as they are seated', () => {
  const random = generator(4)
  for (let nth = 0; nth < 300; nth += 1) {
    const values = Array.from({ length: 2 * (1 + (nth % 4)) }, () => Math.floor(random() * 80_000))
    const split = evenSplit(values)
    expect(split && difference(split)).toBe(leastDifference(values))
  }
})
