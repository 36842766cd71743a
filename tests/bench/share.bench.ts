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
  readonly seen?: (x: number, job: number) => number
}

/** A bias of its own: the same for all tubes, so jobs of one size ask alike. */
const shifted = (x: number, job: number): number => x + 350 * (job % 7)

/** A circuit of its own: no two jobs see the same spread. */
export const ownCircuit = (x: number, job: number): number => Math.round((x * (93 + ((5 * job) % 17))) / 100)

export function drawer({ tubes, types, seed, sizes, seen = shifted }: Drawer): ShareProblem {
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
  return problemOf(glass, wishes, seen)
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

type Goals = { readonly seconds: number; readonly gap: number }

function figures(label: string, { seconds, result }: Timed, goals: Goals): Figure[] {
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

/** Of other seeds, the worst of each. */
async function otherDrawers(label: string, of: Omit<Drawer, 'seed'>, seeds: readonly number[]): Promise<Figure[]> {
  const timed: Timed[] = []
  for (const seed of seeds) timed.push(await shared(drawer({ ...of, seed }), SECONDS))
  const sum = (jobs: (result: ShareResult) => number) => timed.reduce((total, { result }) => total + jobs(result), 0)
  const named = `${label}, ${seeds.length} other drawers`
  return [
    atMost(`${named}: seconds, the slowest`, Math.max(...timed.map(({ seconds }) => seconds)), 's', SCARCE.seconds),
    atMost(
      `${named}: proved gap, the widest`,
      Math.max(...timed.map(({ result }) => result.gapPercent)),
      '%',
      SCARCE.gap,
    ),
    watched(
      `${named}: jobs served, beside the proved most`,
      sum(({ jobsServed }) => jobsServed),
      'jobs',
      sum(({ jobsAtMost }) => jobsAtMost),
    ),
  ]
}

const SCARCE: Goals = { seconds: 30, gap: 0.5 }
/** Given to the search: the solver looks at the clock now and then only. */
const SECONDS = 27

/** Harder ones: nothing falls into parts, threes that leave one over, and no two circuits alike. */
const SHAPES: readonly (readonly [string, Omit<Drawer, 'seed'>])[] = [
  ['50 jobs, 200 tubes of one type', { tubes: 200, types: 1, sizes: LARGE_SIZES }],
  ['50 jobs, 120 tubes of one type, threes', { tubes: 120, types: 1, sizes: [3, 3, 3, 2, 4] }],
  ['50 jobs, 200 tubes, each circuit its own', { tubes: 200, types: 3, sizes: LARGE_SIZES, seen: ownCircuit }],
  [
    '50 jobs, 200 tubes of one type, each circuit its own',
    { tubes: 200, types: 1, sizes: LARGE_SIZES, seen: ownCircuit },
  ],
]

export async function run(): Promise<Figure[]> {
  const all: Figure[] = []
  const full = await shared(drawer({ tubes: 5000, types: 4, seed: 11, sizes: SIZES }), 60)
  all.push(...figures('50 jobs, 5,000 tubes', full, { seconds: 4, gap: 0.01 }))
  const scarce = { tubes: 200, types: 3, sizes: LARGE_SIZES }
  const main = await shared(drawer({ ...scarce, seed: 12 }), SECONDS)
  all.push(...figures('50 jobs, 200 tubes', main, SCARCE))
  all.push(...(await otherDrawers('50 jobs, 200 tubes', scarce, [1, 2, 3, 4, 5])))
  for (const [label, of] of SHAPES)
    all.push(...figures(label, await shared(drawer({ ...of, seed: 12 }), SECONDS), SCARCE))
  return all
}
