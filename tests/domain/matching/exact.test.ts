import { describe, expect, it } from 'vitest'
import type { Candidate } from '@/lib/domain/matching/candidate'
import type { SetOption } from '@/lib/domain/matching/proposal'
import { proposeSet } from '@/lib/domain/matching/propose-set'
import { money } from '@/lib/domain/money'
import { bestByBruteForce, byCloseness, byPrice } from './brute-force'
import { aDemand, generator, randomStock, shuffled, someLimits } from './tubes'

const SHAPES = [
  { currentStep: 0.001, slopeStep: 0.001, priceStep: 1 },
  { currentStep: 0.5, slopeStep: 0.1, priceStep: 500 },
  { currentStep: 2, slopeStep: 0.25, priceStep: 1000 },
  { currentStep: 10, slopeStep: 1, priceStep: 2500 },
]

const sorted = (marks: readonly string[]) => [...marks].sort()
const marksOf = (option: SetOption | null) => option && sorted(option.tubes.map((tube) => tube.candidate.mark))

/** What the program should say, one exhaustive look after another. */
function expected(stock: readonly Candidate[], count: number, cap: number) {
  const closest = bestByBruteForce(stock, { count, cap }, byCloseness)
  const cheapest = closest && bestByBruteForce(stock, { count, cap, within: true }, byPrice)
  const used = new Set([...(closest?.marks ?? []), ...(cheapest?.marks ?? [])])
  const next: string[][] = []
  while (closest && next.length < 3) {
    const left = stock.filter((tube) => !used.has(tube.mark))
    const further = bestByBruteForce(left, { count, cap }, byCloseness)
    if (!further) break
    next.push(sorted(further.marks))
    for (const mark of further.marks) used.add(mark)
  }
  return { closest: closest && sorted(closest.marks), cheapest: cheapest && sorted(cheapest.marks), next }
}

function compareOnce(seed: number, count: number, largest: number): void {
  const random = generator(seed)
  const shape = SHAPES[seed % SHAPES.length] as (typeof SHAPES)[number]
  const stock = randomStock(random, { size: Math.floor(random() * (largest + 1)), ...shape })
  const priceCap = random() < 0.4 ? money(Math.round(count * (2500 + random() * 4000))) : null
  const proposal = proposeSet(shuffled(stock, random), aDemand(count), someLimits({ priceCap }))
  const wanted = expected(stock, count, priceCap ?? Number.POSITIVE_INFINITY)
  const told = {
    closest: marksOf(proposal.closest),
    cheapest: marksOf(proposal.leastPrice),
    next: proposal.next.map(marksOf),
  }
  expect({ seed, ...told }).toEqual({ seed, ...wanted })
}

describe('closest, cheapest and next sets are those of looking at every set', () => {
  for (const [count, cases, largest] of [
    [1, 150, 16],
    [2, 200, 18],
    [3, 200, 14],
    [4, 200, 13],
    [6, 40, 12],
    [8, 15, 12],
  ] as const) {
    it(`${cases} random stocks of up to ${largest} tubes, sets of ${count}`, () => {
      for (let seed = 0; seed < cases; seed += 1) compareOnce(seed * 31 + count, count, largest)
    })
  }
})

describe('a quad out of 60 tubes', () => {
  it('is the best of all 487 635 sets, with fine readings and with coarse ones', () => {
    for (const shape of [SHAPES[0], SHAPES[2]] as (typeof SHAPES)[number][]) {
      const stock = randomStock(generator(60), { size: 60, ...shape })
      const proposal = proposeSet(stock, aDemand(4), someLimits())
      const wanted = bestByBruteForce(stock, { count: 4, cap: Number.POSITIVE_INFINITY }, byCloseness)
      expect(marksOf(proposal.closest)).toEqual(sorted(wanted?.marks ?? []))
    }
  }, 60_000)
})
