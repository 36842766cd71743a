import { expect, test } from 'vitest'
import type { Plane } from '@/lib/domain/pairing/plane'
import { planSets } from '@/lib/planning/quads/plan-sets'
import type { SetPlan } from '@/lib/planning/quads/set-plan'
import { leastCost, spreadOf } from '@/tests/domain/pairing/brute-force'
import { randomPlane, shuffled } from '@/tests/domain/pairing/random-plane'
import { tubesPlane } from '@/tests/domain/pairing/random-tubes'

const plan = (plane: Plane, size: number, shortcuts = true) =>
  planSets(plane, { size, seconds: 30, now: () => performance.now(), shortcuts })

function expectLawful(plane: Plane, size: number, { sets, singles, cost, bound }: SetPlan): void {
  const used = [...sets.flatMap(({ members }) => members), ...singles]
  expect([...used].sort((a, b) => a - b)).toEqual([...plane.x.keys()])
  for (const { members, spread } of sets) {
    expect(members).toHaveLength(size)
    expect(spreadOf(plane, members)).toBe(spread)
  }
  const sum = sets.reduce((total, { spread }) => total + spread, 0)
  expect(cost).toBe(sum + singles.length * plane.singleCost)
  expect(bound).toBeLessThanOrEqual(cost)
}

test.each([
  [4, 500, 9],
  [3, 100, 9],
  [6, 60, 10],
  [2, 60, 9],
  [8, 20, 10],
  [4, 40, 13],
])(
  'sets of %i: %i random planes of up to %i points cost what the plain way costs, and it is proved',
  async (size, cases, most) => {
    for (let seed = 1; seed <= cases; seed += 1) {
      const plane = randomPlane(1000 * size + seed, most)
      const found = await plan(plane, size)
      expectLawful(plane, size, found)
      expect({ seed, cost: found.cost, ended: found.ended }).toEqual({
        seed,
        cost: leastCost(plane, size),
        ended: 'optimal',
      })
      expect(found.bound).toBe(found.cost)
    }
  },
)

// Then listing, cuts and ceilings have to find the choice as well as prove it.
test('120 random planes of up to 13 points, from the proof alone: the same cost as the plain way', async () => {
  for (let seed = 1; seed <= 120; seed += 1) {
    const plane = randomPlane(70_000 + seed, 13, 6)
    const found = await plan(plane, 4, false)
    expectLawful(plane, 4, found)
    expect({ seed, cost: found.cost, ended: found.ended }).toEqual({
      seed,
      cost: leastCost(plane, 4),
      ended: 'optimal',
    })
  }
})

test('24 and 30 tubes: the proof alone comes to the cost that shortcuts come to', async () => {
  for (const [count, coarse] of [
    [24, 1],
    [24, 50],
    [30, 1],
    [30, 50],
  ] as const) {
    const plane = tubesPlane(count, { microamps: 2 * coarse, microsiemens: coarse }, 100_000)
    const [quick, slow] = [await plan(plane, 4), await plan(plane, 4, false)]
    expect([quick.ended, slow.ended]).toEqual(['optimal', 'optimal'])
    expect(slow.cost).toBe(quick.cost)
  }
})

test('40 tubes numbered in two ways: the same cost each time, proved each time', async () => {
  for (const coarse of [1, 50]) {
    const plane = tubesPlane(40, { microamps: 2 * coarse, microsiemens: coarse }, 100_000)
    const costs = []
    for (const seed of [1, 2]) {
      const found = await plan(shuffled(plane, seed).plane, 4)
      expectLawful(shuffled(plane, seed).plane, 4, found)
      expect(found.ended).toBe('optimal')
      costs.push(found.cost)
    }
    expect(new Set(costs).size).toBe(1)
  }
})

test('stopped at once it still has a choice and a bound, and says it was stopped', async () => {
  const plane = tubesPlane(60, { microamps: 1, microsiemens: 1 }, 100_000)
  const now = () => performance.now()
  const late = await planSets(plane, { size: 4, seconds: 0, now })
  expectLawful(plane, 4, late)
  expect(late.ended).toBe('time')
  const cancelled = await planSets(plane, { size: 4, seconds: 60, now, cancelled: () => true })
  expectLawful(plane, 4, cancelled)
  expect(cancelled.ended).toBe('cancelled')
})

test('the bound told on the way never exceeds the proved cost, and never falls', async () => {
  const plane = tubesPlane(60, { microamps: 1, microsiemens: 1 }, 100_000)
  const told: { readonly cost: number; readonly bound: number }[] = []
  const found = await planSets(plane, {
    size: 4,
    seconds: 60,
    now: () => performance.now(),
    report: ({ figures }) => told.push({ cost: figures.cost ?? Number.NaN, bound: figures.bound ?? Number.NaN }),
  })
  expect(found.ended).toBe('optimal')
  expect(told.length).toBeGreaterThan(3)
  told.forEach(({ cost, bound }, place) => {
    expect(cost).toBeGreaterThanOrEqual(found.cost)
    expect(bound).toBeLessThanOrEqual(found.cost)
    expect(bound).toBeGreaterThanOrEqual(told[place - 1]?.bound ?? 0)
  })
})
