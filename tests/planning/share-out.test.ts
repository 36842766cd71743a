import highsLoader, { type Highs } from 'highs'
import { beforeAll, describe, expect, test } from 'vitest'
import { shareOut } from '@/lib/planning/share-out/share-out'
import { JOB_WORTH, type ShareResult } from '@/lib/planning/share-out/share-problem'
import { bestWorth, sharingAsText } from './share-brute-force'
import { contested, type Glass, mediumProblem, problemOf, randomProblem } from './share-fixture'

let highs: Highs
beforeAll(async () => {
  highs = await highsLoader()
})

const still = { seconds: 60, clock: () => 0 }

const worth = ({ jobsServed, cost }: ShareResult): number => JOB_WORTH * jobsServed - cost

describe('sharing a stock over jobs', () => {
  test.each([
    ['with room', randomProblem, 1],
    ['contested', contested, 10_001],
  ] as const)(
    'equals trying every way, and the bound is that: 500 small cases, %s',
    (_, problemFrom, first) => {
      for (let seed = first; seed < first + 500; seed += 1) {
        const problem = problemFrom(seed)
        const result = shareOut(highs, problem, still)
        const best = bestWorth(problem)
        expect(worth(result), `seed ${seed}: found`).toBe(best)
        expect(JOB_WORTH * result.jobsAtMost - result.costAtLeast, `seed ${seed}: bound`).toBe(best)
        expect(result.gapPercent, `seed ${seed}`).toBe(0)
      }
    },
    60_000,
  )

  // Written out as text, so that nothing of the search is in it.
  test('20 cases of up to 22 tubes and 9 jobs, some of two sets: what HiGHS finds over every set there is', () => {
    for (let seed = 1; seed <= 20; seed += 1) {
      const problem = mediumProblem(seed)
      const result = shareOut(highs, problem, still)
      const best = highs.solve(sharingAsText(problem), { mip_rel_gap: 0, mip_abs_gap: 0.1 })
      expect(best.Status).toBe('Optimal')
      const { jobsServed, jobsAtMost, cost, costAtLeast } = result
      expect([jobsServed, cost], `seed ${seed}`).toEqual([jobsAtMost, costAtLeast])
      expect(cost - 1e8 * jobsServed, `seed ${seed}`).toBe(Math.round(best.ObjectiveValue ?? Number.NaN))
    }
  }, 60_000)

  test.each([
    // Each pair by half: the relaxed program serves 1.5.
    ['three pairs of three tubes', 3, 2, 1],
    ['five pairs of five tubes', 5, 2, 2],
    ['four threes of eight tubes', 8, 3, 2],
    ['nine quads of fifteen tubes', 15, 4, 3],
  ])('%s all alike: %i tubes in sets of %i serve %i', (_, tubes, count, served) => {
    const glass = Array.from({ length: tubes }, (__, at) => ({ x: 30_000 + 10 * at, y: 10_000, cost: 0 }))
    const wishes = Array.from({ length: 9 }, (__, job) => ({ job, count, tubes: [...glass.keys()] }))
    // Alike, and each circuit its own.
    for (const gain of [0, 1]) {
      const problem = problemOf(glass, wishes, (x, job) => x + gain * Math.round((x * job) / 1000))
      const result = shareOut(highs, problem, still)
      expect(result).toMatchObject({ jobsServed: served, jobsAtMost: served, gapPercent: 0 })
    }
  })

  test('no tube twice, no set for a job that goes without another, limits kept: 100 cases', () => {
    for (let seed = 1001; seed <= 1100; seed += 1) {
      const problem = randomProblem(seed)
      const { chosen } = shareOut(highs, problem, still)
      const used = chosen.flatMap((column) => column?.tubes ?? [])
      expect(new Set(used).size, `seed ${seed}`).toBe(used.length)
      for (let job = 0; job < problem.jobCount; job += 1) {
        const given = problem.groups.flatMap((group, at) => (group.job === job ? [chosen[at] !== null] : []))
        expect(new Set(given).size, `seed ${seed}, job ${job}`).toBeLessThanOrEqual(1)
      }
      for (const column of chosen) if (column) expect(column.set.xRange).toBeLessThanOrEqual(6000)
    }
  })

  test('it never serves fewer than first come, first served', () => {
    for (let seed = 2001; seed <= 2050; seed += 1) {
      const { jobsServed, cost, greedy } = shareOut(highs, randomProblem(seed), still)
      expect(JOB_WORTH * jobsServed - cost).toBeGreaterThanOrEqual(JOB_WORTH * greedy.jobsServed - greedy.cost)
    }
  })

  test('the quad is not broken for the single: first come serves 2 of 3, sharing serves 3', () => {
    const glass: Glass[] = [30, 30, 30, 30, 60].map((milliamps) => ({ x: 1000 * milliamps, y: 10_000, cost: 0 }))
    const all = [0, 1, 2, 3, 4]
    // The single comes first and would take place 0, which the quad needs.
    const wishes = [
      { job: 0, count: 1, tubes: all },
      { job: 1, count: 4, tubes: all },
    ]
    const { jobsServed, greedy, gapPercent } = shareOut(highs, problemOf(glass, wishes), still)
    expect([greedy.jobsServed, jobsServed, gapPercent]).toEqual([1, 2, 0])
  })

  test('cancelled before the first round it still gives what first come, first served gives, or better', () => {
    const problem = randomProblem(7)
    const result = shareOut(highs, problem, { ...still, cancelled: () => true })
    expect(result.stop).toBe('cancelled')
    expect(result.jobsServed).toBeGreaterThanOrEqual(result.greedy.jobsServed)
    expect(result.gapPercent).toBeGreaterThan(0)
  })
})
