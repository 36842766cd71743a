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

/** Each circuit sees the same glass a little differently: `shift` moves x for a job. */
export function problemOf(glass: readonly Glass[], wishes: readonly Wish[], shift = (_job: number) => 0): ShareProblem {
  const groups = wishes.map(({ job, count, xLimit = 6000, tubes }): ShareGroup => {
    const of = (read: (one: Glass) => number) => Int32Array.from(tubes, (tube) => read(glass[tube] as Glass))
    return {
      job,
      tubes: Int32Array.from(tubes),
      index: setIndex({
        x: of(({ x }) => x + shift(job)),
        y: of(({ y }) => y),
        cost: of(({ cost }) => cost),
        price: of(() => 100),
      }),
      query: { count, scale: { xYard: 5000, yYard: 1000, xWeight: 1000, yWeight: 1000 }, xLimit, yLimit: 2000 },
    }
  })
  return { tubeCount: glass.length, jobCount: Math.max(0, ...wishes.map(({ job }) => job + 1)), groups }
}
