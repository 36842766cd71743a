import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bestSet, type SetQuery } from '@/lib/domain/matching/search/best-set'
import { nextSets } from '@/lib/domain/matching/search/next-sets'
import { setIndex } from '@/lib/domain/matching/search/set-index'
import type { SpreadScale } from '@/lib/domain/matching/search/spread-cost'
import { generator } from '../tubes'
import { asJudged, bestOfEvery } from './every-set'
import { pick, randomPoints, SHAPES } from './random-points'

/** As the arrangements weigh, and each spread alone. */
const SCALES: readonly SpreadScale[] = [
  { xYard: 5000, yYard: 1000, xWeight: 1000, yWeight: 1000 },
  { xYard: 5000, yYard: 1000, xWeight: 1000, yWeight: 250 },
  { xYard: 2000, yYard: 500, xWeight: 200, yWeight: 1000 },
  { xYard: 5000, yYard: 1000, xWeight: 1000, yWeight: 0 },
  { xYard: 5000, yYard: 1000, xWeight: 0, yWeight: 1000 },
  { xYard: 7, yYard: 3, xWeight: 13, yWeight: 17 },
]

const maybe = <T>(random: () => number, chance: number, value: () => T): T | undefined =>
  random() < chance ? value() : undefined

function randomQuery(random: () => number, count: number, size: number): SetQuery {
  const limits = {
    xLimit: maybe(random, 0.2, () => Math.floor(random() * 40_000)),
    yLimit: maybe(random, 0.2, () => Math.floor(random() * 6000)),
    priceCap: maybe(random, 0.4, () => count * (3000 + Math.floor(random() * 4000))),
    adjustments: maybe(random, 0.4, () =>
      Float64Array.from({ length: size }, () => Math.floor((random() - 0.3) * 2_000_000)),
    ),
    excluded: maybe(random, 0.3, () => Uint8Array.from({ length: size }, () => (random() < 0.2 ? 1 : 0))),
    ceiling: maybe(random, 0.2, () => Math.floor(random() * 2_000_000 * count)),
  }
  return { count, scale: pick(SCALES, random), ...limits }
}

function compareOnce(seed: number, count: number, largest: number): boolean {
  const random = generator(seed)
  const fewest = random() < 0.1 ? 0 : count
  const size = fewest + Math.floor(random() * (largest - fewest + 1))
  const points = randomPoints(random, { size, ...pick(SHAPES, random) })
  const query = randomQuery(random, count, size)
  const wanted = bestOfEvery(points, query)
  expect({ seed, best: asJudged(bestSet(setIndex(points), query)) }).toEqual({ seed, best: wanted })
  return wanted !== null
}

describe('the best set is that of looking at every set, ties and limits included', () => {
  for (const [count, cases, largest] of [
    [1, 600, 30],
    [2, 800, 40],
    [3, 700, 20],
    [4, 600, 16],
    [6, 500, 13],
    [8, 500, 12],
  ] as const) {
    it(`${cases} random cases of up to ${largest} tubes, sets of ${count}`, () => {
      let found = 0
      for (let seed = 0; seed < cases; seed += 1) {
        if (compareOnce(seed * 31 + count, count, largest)) found += 1
      }
      expect(found).toBeGreaterThan(cases / 4)
    })
  }

  it('4 cases of 45 tubes, sets of 4: the best of all 148 995', () => {
    for (let seed = 0; seed < 4; seed += 1) {
      const random = generator(seed + 900)
      const points = randomPoints(random, { size: 45, ...pick(SHAPES, random) })
      const query = randomQuery(random, 4, 45)
      expect({ seed, best: asJudged(bestSet(setIndex(points), query)) }).toEqual({
        seed,
        best: bestOfEvery(points, query),
      })
    }
  })
})

describe('by hand', () => {
  const points = {
    x: Int32Array.of(70_000, 71_000, 74_000, 78_000),
    y: Int32Array.of(6000, 6100, 6300, 6900),
    cost: Int32Array.of(0, 0, 0, 0),
    price: Int32Array.of(5000, 5000, 2500, 2000),
  }
  const scale: SpreadScale = { xYard: 5000, yYard: 1000, xWeight: 1000, yWeight: 1000 }

  it('70 and 71 mA with 6.0 and 6.1 mA/V count 1/5 + (0.1/6.0)/0.1 = 0.366666 yardsticks', () => {
    expect(bestSet(setIndex(points), { count: 2, scale })).toEqual({
      places: [0, 1],
      objective: 366_666,
      spread: 366_666,
      cost: 0,
      price: 10_000,
      xRange: 1000,
      yLowest: 6000,
      yHighest: 6100,
    })
  })

  it('half a yardstick on the second tube makes the third its better companion', () => {
    const set = bestSet(setIndex({ ...points, cost: Int32Array.of(0, 1_200_000, 0, 0) }), { count: 2, scale })
    expect(set?.places).toEqual([0, 2])
    expect(set?.objective).toBe(800_000 + 500_000)
  })

  it('a ceiling of one point less finds nothing', () => {
    const index = setIndex(points)
    expect(bestSet(index, { count: 2, scale, ceiling: 366_666 })?.places).toEqual([0, 1])
    expect(bestSet(index, { count: 2, scale, ceiling: 366_665 })).toBeNull()
  })

  it('the next set shares no tube and counts no less', () => {
    const index = setIndex(points)
    const best = bestSet(index, { count: 2, scale })
    expect(best && nextSets(index, { count: 2, scale }, [best], 3).map(({ places }) => places)).toEqual([[2, 3]])
  })
})

describe('laws on some thousand tubes', () => {
  const cases = fc.record({
    seed: fc.integer({ min: 0, max: 1e9 }),
    size: fc.integer({ min: 500, max: 3000 }),
    count: fc.constantFrom(2, 3, 4, 6, 8),
    shape: fc.constantFrom(...SHAPES.slice(0, 3)),
    scale: fc.constantFrom(...SCALES.slice(0, 3)),
  })

  it('no random set counts less; the figures are those of its tubes; without it the next counts no less', () => {
    fc.assert(
      fc.property(cases, ({ seed, size, count, shape, scale }) => {
        const random = generator(seed)
        const points = randomPoints(random, { size, ...shape })
        const index = setIndex(points)
        const best = bestSet(index, { count, scale })
        expect(best).not.toBeNull()
        if (!best) return
        expect(new Set(best.places).size).toBe(count)
        expect(best.objective).toBe(best.spread + best.cost)
        expect(best.cost).toBe(best.places.reduce((sum, place) => sum + (points.cost[place] as number), 0))
        const [next] = nextSets(index, { count, scale }, [best], 1)
        expect(next?.objective).toBeGreaterThanOrEqual(best.objective)
        expect(next?.places.some((place) => best.places.includes(place))).toBe(false)
      }),
      { seed: 21, numRuns: 40 },
    )
  })
})
