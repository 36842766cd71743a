/**
 * Sharing one stock over fifty jobs: a full drawer (5,000 tubes) and a scarce one (200), against
 * first come, first served in the same run. Stock and jobs are invented here from fixed seeds:
 * sets of 2, 4 and 6; every circuit sees each tube a little differently, as circuits do.
 */
import { performance } from 'node:perf_hooks'
import highsLoader from 'highs'
import { shareOut } from '@/lib/planning/share-out/share-out'
import type { ShareProblem, ShareResult } from '@/lib/planning/share-out/share-problem'
import type { Figure } from '@/lib/setup/bench'
import { type Glass, numbers, problemOf, type Wish } from '@/tests/planning/share-fixture'

export const name = 'share'

const JOBS = 50
const SIZES = [2, 2, 4, 2, 4, 6, 2, 2, 4, 2]
/** 220 tubes wanted of 200 there. */
const LARGE_SIZES = [4, 4, 2, 6, 4, 8, 2, 4, 6, 4]

/** Sum of four even draws: near enough to a bell. */
const bell = (next: (below: number) => number, middle: number, spread: number): number =>
  Math.round(middle + spread * ((next(1000) + next(1000) + next(1000) + next(1000)) / 2000 - 1))

type Drawer = {
  readonly tubes: number
  readonly types: number
  readonly seed: number
  readonly sizes: readonly number[]
}

export function drawer({ tubes, types, seed, sizes }: Drawer): ShareProblem {
  const next = numbers(seed)
  const glass: (Glass & { type: number })[] = Array.from({ length: tubes }, () => ({
    x: bell(next, 38_000, 16_000),
    y: bell(next, 10_500, 3000),
    cost: 10_000 * next(30),
    type: next(types),
  }))
  const wishes = Array.from({ length: JOBS }, (_, job): Wish => {
    const type = job % types
    const of = glass.flatMap((one, tube) => (one.type === type ? [tube] : []))
    return { job, count: sizes[job % sizes.length] as number, xLimit: 5000, tubes: of }
  })
  return problemOf(glass, wishes, (job) => 350 * (job % 7))
}

type Timed = { readonly seconds: number; readonly result: ShareResult }

async function shared(problem: ShareProblem, seconds: number): Promise<Timed> {
  const highs = await highsLoader()
  const clock = () => performance.now() / 1000
  const began = clock()
  const result = shareOut(highs, problem, { seconds, clock })
  return { seconds: clock() - began, result }
}

const watched = (figure: string, value: number, unit: string, reference: number | null = null): Figure => ({
  figure,
  value,
  unit,
  reference,
  goal: null,
  better: 'higher',
})
const atMost = (figure: string, value: number, unit: string, goal: number): Figure => ({
  figure,
  value,
  unit,
  reference: null,
  goal,
  better: 'lower',
})

function figures(label: string, { seconds, result }: Timed, goals: { seconds: number; gap: number }): Figure[] {
  const costGap = result.cost > 0 ? (100 * (result.cost - result.costAtLeast)) / result.cost : 0
  return [
    atMost(`${label}: seconds`, seconds, 's', goals.seconds),
    atMost(`${label}: proved gap`, result.gapPercent, '%', goals.gap),
    watched(
      `${label}: jobs served, beside first come, first served`,
      result.jobsServed,
      'jobs',
      result.greedy.jobsServed,
    ),
    watched(`${label}: jobs served, beside the proved most`, result.jobsServed, 'jobs', result.jobsAtMost),
    // The bound holds for as many jobs as can be: with fewer served there is nothing to compare.
    ...(result.jobsServed === result.jobsAtMost
      ? [{ ...watched(`${label}: gap of the cost of the sets alone`, costGap, '%'), better: 'lower' as const }]
      : []),
    watched(`${label}: rounds`, result.rounds, 'rounds'),
    watched(`${label}: sets looked at`, result.sets, 'sets'),
  ]
}

export async function run(): Promise<Figure[]> {
  const full = await shared(drawer({ tubes: 5000, types: 4, seed: 11, sizes: SIZES }), 60)
  const scarce = await shared(drawer({ tubes: 200, types: 3, seed: 12, sizes: LARGE_SIZES }), 30)
  return [
    ...figures('50 jobs, 5,000 tubes', full, { seconds: 4, gap: 0.01 }),
    ...figures('50 jobs, 200 tubes', scarce, { seconds: 30, gap: 0.5 }),
  ]
}
