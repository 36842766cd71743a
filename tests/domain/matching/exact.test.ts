import { describe, expect, it } from 'vitest'
import type { Candidate } from '@/lib/domain/matching/candidate'
import type { SetOption } from '@/lib/domain/matching/proposal'
import { proposeSet } from '@/lib/domain/matching/propose-set'
import type { SetQuery } from '@/lib/domain/matching/search/best-set'
import type { SetPoints } from '@/lib/domain/matching/search/set-index'
import { money } from '@/lib/domain/money'
import { bestOfEvery } from './search/every-set'
import { aDemand, generator, randomStock, shuffled, someLimits } from './tubes'

const SHAPES = [
  { currentStep: 0.001, slopeStep: 0.001, priceStep: 1 },
  { currentStep: 0.5, slopeStep: 0.1, priceStep: 500 },
  { currentStep: 2, slopeStep: 0.25, priceStep: 1000 },
  { currentStep: 10, slopeStep: 1, priceStep: 2500 },
]

const SCALE = { xYard: 5000, yYard: 1000, xWeight: 1000, yWeight: 1000 }

/** Stock of random fixtures is in natural order of marks. Median: the upper of two in the middle. */
function pointsOf(stock: readonly Candidate[], costOf: (price: number) => number): SetPoints {
  const prices = stock.map(({ price }) => price)
  return {
    x: Int32Array.from(stock, ({ test }) => Math.round((test?.plateCurrent ?? 0) * 1e6)),
    y: Int32Array.from(stock, ({ test }) => Math.round((test?.transconductance ?? 0) * 1e6)),
    cost: Float64Array.from(prices, costOf),
    price: Int32Array.from(prices),
  }
}

/** A hundredth of a yardstick for a set at the median price, as the fixture's weights say. */
function byWeights(stock: readonly Candidate[], count: number): SetPoints {
  const sorted = stock.map(({ price }) => price as number).sort((a, b) => a - b)
  const median = sorted[Math.floor(sorted.length / 2)] ?? 1
  return pointsOf(stock, (price) => Math.round((1e6 * (0.01 * (price / median))) / count))
}

const marks = (option: SetOption | null) => option?.tubes.map(({ candidate }) => candidate.mark).sort()

type Wish = { readonly stock: readonly Candidate[]; readonly points: SetPoints; readonly query: SetQuery }

const everyMarks = ({ stock, points, query }: Wish) => {
  const best = bestOfEvery(points, query)
  return best?.places.map((place) => (stock[place] as Candidate).mark).sort()
}

/** What the program should say, one exhaustive look after another. */
function expected(stock: readonly Candidate[], count: number, priceCap: number) {
  const points = byWeights(stock, count)
  const query = { count, scale: SCALE, priceCap }
  const best = everyMarks({ stock, points, query })
  const cheapest = everyMarks({
    stock,
    points: pointsOf(stock, (price) => price * 2_000_001),
    query: { ...query, xLimit: 5000, yLimit: 1000 },
  })
  const excluded = Uint8Array.from(stock, ({ mark }) => ([...(best ?? []), ...(cheapest ?? [])].includes(mark) ? 1 : 0))
  const next: string[][] = []
  while (best && next.length < 3) {
    const further = everyMarks({ stock, points, query: { ...query, excluded } })
    if (!further) break
    next.push(further)
    for (const [place, { mark }] of stock.entries()) if (further.includes(mark)) excluded[place] = 1
  }
  return { best, cheapest, next }
}

function compareOnce(seed: number, count: number, largest: number): void {
  const random = generator(seed)
  const shape = SHAPES[seed % SHAPES.length] as (typeof SHAPES)[number]
  const stock = randomStock(random, { size: Math.floor(random() * (largest + 1)), ...shape })
  const priceCap = random() < 0.4 ? money(Math.round(count * (2500 + random() * 4000))) : null
  // Dear tubes are no longer in the running, so they have no say in the usual price.
  const running = stock.filter(({ price }) => priceCap === null || price <= priceCap)
  const proposal = proposeSet(shuffled(stock, random), aDemand(count), someLimits({ priceCap }))
  const wanted = expected(running, count, priceCap ?? Number.POSITIVE_INFINITY)
  const told = { best: marks(proposal.best), cheapest: marks(proposal.leastPrice), next: proposal.next.map(marks) }
  expect({ seed, ...told }).toEqual({ seed, ...wanted })
}

describe('best, cheapest and next sets are those of looking at every set', () => {
  for (const [count, cases, largest] of [
    [1, 100, 16],
    [2, 120, 18],
    [3, 120, 13],
    [4, 100, 12],
    [6, 30, 11],
    [8, 15, 11],
  ] as const) {
    it(`${cases} random stocks of up to ${largest} tubes, sets of ${count}`, () => {
      for (let seed = 0; seed < cases; seed += 1) compareOnce(seed * 31 + count, count, largest)
    })
  }
})
