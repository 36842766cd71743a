import { setIndex } from '@/lib/domain/matching/search/set-index'
import type { ShareGroup, ShareProblem } from '@/lib/planning/share-out/share-problem'

/** Repeatable: the same seed, the same numbers. */
export function numbers(seed: number): (below: number) => number {
  let state = seed >>> 0
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return Math.floor((state / 2 ** 32) * below)
  }
}

export type Wish = {
  readonly job: number
  readonly count: number
  readonly xLimit?: number
  readonly tubes: readonly number[]
}
export type Glass = { readonly x: number; readonly y: number; readonly cost: number }

/** Each circuit sees the same glass a little differently: `seen` is x in that of a job. */
export function problemOf(
  glass: readonly Glass[],
  wishes: readonly Wish[],
  seen = (x: number, _job: number) => x,
): ShareProblem {
  const groups = wishes.map(({ job, count, xLimit = 6000, tubes }): ShareGroup => {
    const of = (read: (one: Glass) => number) => Int32Array.from(tubes, (tube) => read(glass[tube] as Glass))
    return {
      job,
      tubes: Int32Array.from(tubes),
      index: setIndex({
        x: of(({ x }) => seen(x, job)),
        y: of(({ y }) => y),
        cost: of(({ cost }) => cost),
        price: of(() => 100),
      }),
      query: { count, scale: { xYard: 5000, yYard: 1000, xWeight: 1000, yWeight: 1000 }, xLimit, yLimit: 2000 },
    }
  })
  return { tubeCount: glass.length, jobCount: Math.max(0, ...wishes.map(({ job }) => job + 1)), groups }
}

/** Two or three jobs of one or two sets each, out of 5 to 8 tubes. */
export function randomProblem(seed: number): ShareProblem {
  const next = numbers(seed)
  const glass: Glass[] = Array.from({ length: 5 + next(4) }, () => ({
    x: 30_000 + 500 * next(20),
    y: 9000 + 100 * next(15),
    cost: 50_000 * next(4),
  }))
  const all = glass.map((_, tube) => tube)
  const jobs = 2 + next(2)
  const wishes: Wish[] = []
  for (let job = 0; job < jobs; job += 1) {
    for (let group = 0; group <= next(5) % 2; group += 1)
      wishes.push({ job, count: 1 + next(3), tubes: all.filter(() => next(6) > 0) })
  }
  return problemOf(glass, wishes, (x, job) => x + 700 * job)
}

/** Up to six jobs that want pairs and threes of few tubes which lie near each other: parts of sets add up to more than whole ones. */
export function contested(seed: number): ShareProblem {
  const next = numbers(seed)
  const glass: Glass[] = Array.from({ length: 3 + next(5) }, () => ({
    x: 30_000 + 600 * next(14),
    y: 9000 + 100 * next(15),
    cost: 50_000 * next(3),
  }))
  const all = glass.map((_, tube) => tube)
  const wishes = Array.from({ length: 3 + next(3) }, (_, job): Wish => ({ job, count: 2 + (next(3) % 2), tubes: all }))
  // Some alike, some circuits of their own.
  const own = next(2)
  return problemOf(glass, wishes, (x, job) => x + own * Math.round((x * (job % 3)) / 40))
}

/** Of two types; every fourth job wants a pair of each. */
export function mediumProblem(seed: number): ShareProblem {
  const next = numbers(seed)
  const glass: Glass[] = Array.from({ length: 16 + next(7) }, () => ({
    x: 30_000 + 500 * next(24),
    y: 9000 + 100 * next(22),
    cost: 50_000 * next(4),
  }))
  const ofType = [0, 1].map((type) => [...glass.keys()].filter((tube) => tube % 2 === type))
  const wishes = Array.from({ length: 6 + next(4) }, (_, job): Wish[] => {
    const want = (type: number, count: number): Wish => ({ job, count, tubes: ofType[type] as number[] })
    return job % 4 === 3 ? [want(0, 2), want(1, 2)] : [want(job % 2, 2 + next(3))]
  })
  return problemOf(glass, wishes.flat(), (x, job) => Math.round(x * (1 + (job % 3) / 30)))
}
