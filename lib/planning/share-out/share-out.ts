/**
 * Sharing a stock over all open jobs: each part that has no tube in common with the others by
 * itself (independent-parts.ts, column-search.ts), put together again. What is best, and the
 * bound, of the whole is the sum of those of its parts.
 */
import type { Highs } from 'highs'
import { independentParts, type SharePart } from './independent-parts'
import { type PartResult, sharePart } from './search/column-search'
import {
  JOB_WORTH,
  type ShareColumn,
  type ShareProblem,
  type ShareResult,
  type ShareSettings,
  type ShareStop,
} from './share-problem'

export function shareOut(highs: Highs, problem: ShareProblem, settings: ShareSettings): ShareResult {
  const parts = independentParts(problem)
  const begun = settings.clock()
  const results: PartResult[] = []
  parts.forEach((part, at) => {
    const left = Math.max(0, settings.seconds - (settings.clock() - begun))
    const share = sizeOf(part) / parts.slice(at).reduce((sum, each) => sum + sizeOf(each), 0)
    const beside = besides(results, parts.slice(at + 1))
    results.push(sharePart(highs, part.problem, partSettings(settings, left * share, beside)))
  })
  return together(problem, parts, results)
}

type Beside = { readonly rounds: number; readonly sets: number; readonly jobs: number }

const sizeOf = ({ groups }: SharePart): number => groups.length

function besides(done: readonly PartResult[], waiting: readonly SharePart[]): Beside {
  const sum = (of: (each: PartResult) => number) => done.reduce((total, each) => total + of(each), 0)
  return {
    rounds: sum(({ rounds }) => rounds),
    sets: sum(({ sets }) => sets),
    jobs: sum(({ jobsAtMost }) => jobsAtMost) + waiting.reduce((total, { problem }) => total + problem.jobCount, 0),
  }
}

function partSettings(settings: ShareSettings, seconds: number, beside: Beside): ShareSettings {
  const { onRound } = settings
  if (!onRound) return { ...settings, seconds }
  return {
    ...settings,
    seconds,
    onRound: ({ rounds, sets, jobsAtMost }) =>
      onRound({ rounds: beside.rounds + rounds, sets: beside.sets + sets, jobsAtMost: beside.jobs + jobsAtMost }),
  }
}

function together(problem: ShareProblem, parts: readonly SharePart[], results: readonly PartResult[]): ShareResult {
  const sum = (of: (each: PartResult) => number) => results.reduce((total, each) => total + of(each), 0)
  const chosen: (ShareColumn | null)[] = problem.groups.map(() => null)
  results.forEach((result, at) => {
    parts[at]?.groups.forEach((group, place) => {
      const column = result.chosen[place]
      if (column) chosen[group] = { ...column, group }
    })
  })
  const [jobsServed, jobsAtMost, cost] = [sum((of) => of.jobsServed), sum((of) => of.jobsAtMost), sum((of) => of.cost)]
  const [worth, bound] = [JOB_WORTH * jobsServed - cost, sum((of) => of.worthAtMost)]
  return {
    chosen,
    jobsServed,
    jobsAtMost,
    cost,
    costAtLeast: Math.max(0, JOB_WORTH * jobsAtMost - bound),
    gapPercent: worth > 0 ? (100 * Math.max(0, bound - worth)) / worth : 0,
    greedy: { jobsServed: sum(({ greedy }) => greedy.jobsServed), cost: sum(({ greedy }) => greedy.cost) },
    rounds: sum(({ rounds }) => rounds),
    sets: sum(({ sets }) => sets),
    stop: stopOf(results.map(({ stop }) => stop)),
  }
}

function stopOf(stops: readonly ShareStop[]): ShareStop {
  if (stops.includes('cancelled')) return 'cancelled'
  return stops.includes('time') ? 'time' : 'proved'
}
