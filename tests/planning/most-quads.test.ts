/** The most quads a stock gives: against trying every way, and against what its pairs allow. */
import { describe, expect, it } from 'vitest'
import { mostQuads, type QuadLimits, type ReadPoint } from '@/lib/planning/sets/most-quads'
import { generator } from '@/tests/domain/matching/tubes'

const LIMITS: QuadLimits = { xLimit: 5000, yLimit: 1000 }

const fits = (set: readonly ReadPoint[], { xLimit, yLimit }: QuadLimits): boolean => {
  const [xs, ys] = [set.map(({ x }) => x), set.map(({ y }) => y)]
  const [low, high] = [Math.min(...ys), Math.max(...ys)]
  return Math.max(...xs) - Math.min(...xs) <= xLimit && (high - low) * 10_000 <= yLimit * low
}

/** Each tube in turn is left single or put in every quad with others after it. */
function byEveryWay(points: readonly ReadPoint[], limits: QuadLimits): number {
  if (points.length < 4) return 0
  const [first, ...others] = points as [ReadPoint, ...ReadPoint[]]
  let most = byEveryWay(others, limits)
  for (let a = 0; a < others.length; a += 1) {
    for (let b = a + 1; b < others.length; b += 1) {
      for (let c = b + 1; c < others.length; c += 1) {
        const set = [first, others[a], others[b], others[c]] as ReadPoint[]
        if (!fits(set, limits)) continue
        const left = others.filter((_, at) => at !== a && at !== b && at !== c)
        most = Math.max(most, 1 + byEveryWay(left, limits))
      }
    }
  }
  return most
}

const randomPoints = (random: () => number, size: number, width: number): ReadPoint[] =>
  Array.from({ length: size }, () => ({
    x: 60_000 + 100 * Math.floor((width * random()) / 100),
    y: 5000 + 10 * Math.floor(120 * random()),
  }))

describe('the most quads', () => {
  it.each([
    ['close together', 8000],
    ['spread', 16_000],
    ['far apart', 30_000],
  ])('equals trying every way: 150 stocks of up to 12 tubes, %s', (_, width) => {
    const random = generator(width)
    const found = Array.from({ length: 150 }, () => {
      const points = randomPoints(random, 4 + Math.floor(9 * random()), width)
      const most = mostQuads(points, LIMITS)
      expect(most, JSON.stringify(points)).toBe(byEveryWay(points, LIMITS))
      return most ?? 0
    })
    expect(Math.max(...found)).toBeGreaterThan(1)
  })

  it('taking the closest four first is not always the most', () => {
    // The four about 5 mA are closest and leave three on either side, 0 to 2 and 8 to 9.9 mA.
    // 0, 1, 2, 4.9 and 5.1, 8, 9, 9.9 are two.
    const points = [0, 1, 2, 4.9, 5, 5, 5.1, 8, 9, 9.9].map((milliamps) => ({ x: 1000 * milliamps, y: 6000 }))
    expect(mostQuads(points, LIMITS)).toBe(2)
  })

  it('a long stock of sparse stretches is counted, a crowded one is given up and says so', () => {
    const sparse = Array.from({ length: 400 }, (_, at) => ({ x: 1500 * at, y: 6000 }))
    // Four in a row span 4.5 mA.
    expect(mostQuads(sparse, LIMITS)).toBe(100)
    const crowded = randomPoints(generator(7), 90, 6000)
    expect(mostQuads(crowded, { xLimit: 4000, yLimit: 300 })).toBeNull()
  })
})
