import highsLoader, { type Highs } from 'highs'
import { beforeAll, describe, expect, test } from 'vitest'
import { alikeJobs, toEachJob } from '@/lib/planning/share-out/alike-jobs'
import { boxPool } from '@/lib/planning/share-out/count/box-pool'
import { JobsProgram } from '@/lib/planning/share-out/count/jobs-program'
import { limitBoxes, staysWithin } from '@/lib/planning/share-out/count/limit-boxes'
import { firstCome } from '@/lib/planning/share-out/first-come'
import { independentParts } from '@/lib/planning/share-out/independent-parts'
import { everySet } from '@/lib/planning/share-out/search/every-set'
import { polished } from '@/lib/planning/share-out/search/polished'
import { columnOf, costOf, JOB_WORTH, type ShareGroup, type ShareProblem } from '@/lib/planning/share-out/share-problem'
import { bestWorth, setsOf } from './share-brute-force'
import { contested, numbers, problemOf, randomProblem } from './share-fixture'

let highs: Highs
beforeAll(async () => {
  highs = await highsLoader()
})

const seeds = (first: number, count: number) => Array.from({ length: count }, (_, at) => first + at)

/** No set costs near a job's worth, so the best worth tells the number of jobs. */
const mostJobs = (problem: ShareProblem): number => Math.ceil(bestWorth(problem) / JOB_WORTH)

const keyOf = (tubes: readonly number[]): string => [...tubes].sort((a, b) => a - b).join()

describe('boxes within the limits', () => {
  test('hold every set there is, nothing but sets, and none holds another: 200 cases', () => {
    for (const seed of seeds(1, 200)) {
      const problem = randomProblem(seed)
      problem.groups.forEach((group, at) => {
        const boxes = limitBoxes(group).map((tubes) => new Set(tubes))
        const sets = setsOf(problem, at).map(({ tubes }) => tubes)
        for (const tubes of sets) {
          const holding = boxes.filter((box) => tubes.every((tube) => box.has(tube)))
          expect(holding.length, `seed ${seed}: ${tubes}`).toBeGreaterThan(0)
        }
        const possible = new Set(sets.map(keyOf))
        const fits = staysWithin(group)
        for (const box of boxes) {
          expect(fits([...box])).toBe(true)
          expect(boxes.filter((other) => [...box].every((tube) => other.has(tube)))).toHaveLength(1)
          const { count } = group.query
          if (box.size === count) expect(possible.has(keyOf([...box])), `seed ${seed}`).toBe(true)
        }
      })
    }
  })

  test('of two circuits that see the same tubes 10 % apart, the narrower lends its boxes to the wider', () => {
    const glass = Array.from({ length: 12 }, (_, at) => ({ x: 30_000 + 1100 * at, y: 10_000, cost: 0 }))
    const all = [...glass.keys()]
    const wishes = [0, 1].map((job) => ({ job, count: 2, tubes: all }))
    const problem = problemOf(glass, wishes, (x, job) => Math.round(x * (job === 0 ? 1 : 1.1)))
    const complete = boxPool(problem)
    const narrow = boxPool(problem, 60)
    expect([complete?.isComplete, narrow?.isComplete]).toEqual([true, false])
    expect(narrow?.boxes.length).toBeLessThan(complete?.boxes.length ?? 0)
    for (const { groups } of narrow?.boxes ?? []) expect(groups).toEqual([0, 1])
  })
})

describe('how many jobs can be served', () => {
  test('the most is served, one more is refused: 160 cases, contested and with jobs of two sets', () => {
    for (const seed of [...seeds(20_001, 100), ...seeds(1, 60)]) {
      const problem = seed > 20_000 ? contested(seed) : randomProblem(seed)
      const alike = alikeJobs(problem)
      const ask = { problem: alike.problem, times: alike.times, secondsLeft: () => 10, cancelled: () => false }
      const program = JobsProgram.of(highs, ask)
      const most = mostJobs(problem)
      expect(program?.relaxedMost(), `seed ${seed}`).toBeGreaterThanOrEqual(most)
      expect(program?.serving(most + 1), `seed ${seed}`).toBe('no')
      const given = program?.serving(most)
      if (!Array.isArray(given)) throw new Error(`Seed ${seed}: ${most} jobs are ${given}`)
      const used = given.flatMap(({ tubes }) => tubes)
      expect(new Set(used).size).toBe(used.length)
      const jobs = toEachJob(alike, given)
      const served = Array.from({ length: problem.jobCount }, (_, job) =>
        jobs.filter((__, group) => problem.groups[group]?.job === job),
      )
      expect(served.filter((sets) => sets.length > 0 && sets.every((set) => set !== null))).toHaveLength(most)
    }
  })

  test('sets that cost more to buy than they may are not given out', () => {
    const glass = [0, 1].map((at) => ({ x: 30_000 + at, y: 10_000, cost: 0 }))
    const problem = problemOf(glass, [{ job: 0, count: 2, tubes: [0, 1] }])
    const capped = {
      ...problem,
      groups: problem.groups.map((of) => ({ ...of, query: { ...of.query, priceCap: 199 } })),
    }
    const serving = (of: ShareProblem) =>
      JobsProgram.of(highs, { problem: of, times: [1], secondsLeft: () => 10, cancelled: () => false })?.serving(1)
    expect([serving(problem), serving(capped)]).toEqual([[expect.anything()], null])
  })
})

test('every set within a ceiling, and no other: 200 groups with prices on tubes', () => {
  for (const seed of seeds(1, 200)) {
    const problem = randomProblem(seed)
    const next = numbers(seed)
    const paid = Array.from({ length: problem.tubeCount }, () => 100_000 * next(8))
    const ceiling = 200_000 * next(12)
    problem.groups.forEach((group, at) => {
      const adjustments = Float64Array.from(group.tubes, (tube) => paid[tube] as number)
      const listed = everySet(group.index, { ...group.query, adjustments, ceiling, most: 1000 })
      const within = setsOf(problem, at)
        .map(({ cost, tubes }) => ({
          cost,
          objective: tubes.reduce((sum, tube) => sum + (paid[tube] ?? 0), cost),
          tubes,
        }))
        .filter(({ objective }) => objective <= ceiling)
      const shown = (listed ?? []).map((set) => {
        const { tubes } = columnOf(problem, at, set)
        return `${keyOf(tubes)} ${set.spread + set.cost} ${set.objective}`
      })
      const expected = within.map(({ cost, objective, tubes }) => `${keyOf(tubes)} ${cost} ${objective}`)
      expect(shown.sort(), `seed ${seed}`).toEqual(expected.sort())
      if (within.length > 0)
        expect(everySet(group.index, { ...group.query, adjustments, ceiling, most: within.length - 1 })).toBeNull()
    })
  }
})

describe('jobs alike', () => {
  const glass = [30_000, 30_100, 30_200, 30_300].map((x) => ({ x, y: 10_000, cost: 0 }))
  const pairs = [0, 1, 2].map((job) => ({ job, count: 2, tubes: [0, 1, 2, 3] }))

  test('three pairs seen with a shift are one job three times; with circuits of their own, three', () => {
    const timesOf = (seen: (x: number, job: number) => number) => alikeJobs(problemOf(glass, pairs, seen)).times
    expect(timesOf((x, job) => x + 500 * job)).toEqual([3])
    expect(timesOf((x, job) => Math.round(x * (1 + job / 10)))).toEqual([1, 1, 1])
  })

  test('what one of them is given, the first come gets', () => {
    const alike = alikeJobs(problemOf(glass, pairs))
    const column = firstCome(alike.problem).columns[0]
    expect(column?.tubes).toEqual([0, 1])
    expect(toEachJob(alike, column ? [column] : []).map((each) => each?.tubes ?? null)).toEqual([
      column?.tubes,
      null,
      null,
    ])
  })
})

test('jobs of two types are two parts; a job that wants both makes them one', () => {
  const glass = Array.from({ length: 8 }, (_, at) => ({ x: 30_000 + at, y: 10_000, cost: 0 }))
  const [low, high] = [
    [0, 1, 2, 3],
    [4, 5, 6, 7],
  ]
  const apart = [
    { job: 0, count: 2, tubes: low },
    { job: 1, count: 2, tubes: high },
    { job: 2, count: 2, tubes: low },
  ]
  const both = [...apart, { job: 3, count: 2, tubes: low }, { job: 3, count: 2, tubes: high }]
  const groupsOf = (wishes: typeof apart) => independentParts(problemOf(glass, wishes)).map(({ groups }) => groups)
  expect(groupsOf(apart)).toEqual([[1], [0, 2]])
  expect(groupsOf(both)).toEqual([[0, 1, 2, 3, 4]])
})

test('choosing two sets anew never costs more, uses no tube twice and keeps every group served: 200 cases', () => {
  let better = 0
  for (const seed of seeds(1, 200)) {
    const problem = contested(seed)
    const { columns } = firstCome(problem)
    const now = polished(problem, columns, () => true)
    const cost = (of: typeof now) => of.reduce((sum, column) => sum + costOf(column), 0)
    expect(cost(now)).toBeLessThanOrEqual(cost(columns))
    if (cost(now) < cost(columns)) better += 1
    const used = now.flatMap(({ tubes }) => tubes)
    expect(new Set(used).size).toBe(used.length)
    expect(now.map(({ group }) => group)).toEqual(columns.map(({ group }) => group))
    for (const { group, set } of now)
      expect(set.xRange).toBeLessThanOrEqual((problem.groups[group] as ShareGroup).query.xLimit ?? 0)
  }
  expect(better).toBeGreaterThan(10)
})
