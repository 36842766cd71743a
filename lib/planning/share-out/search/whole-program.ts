/**
 * The best whole sharing over some sets, as an integer program for HiGHS: the rows are those of
 * master-program.ts. Where it is known how many jobs are served, cost alone counts: in smaller
 * numbers, so more of it is certain.
 */
import type { Highs, HighsCallbackMap, Model } from 'highs'
import { POINTS_PER_YARDSTICK } from '@/lib/domain/matching/search/spread-cost'
import { costOf, JOB_WORTH, type ShareColumn, type ShareProblem } from '../share-problem'
import { type Entry, SparseProgram } from '../sparse-program'

export type WholeAsk = {
  readonly problem: ShareProblem
  /** How many alike jobs each job stands for. */
  readonly times: readonly number[]
  readonly columns: readonly ShareColumn[]
  /** To begin with; of these columns. */
  readonly start: readonly ShareColumn[]
  /** So many are served in any case; null: the more the better. */
  readonly jobs: number | null
  readonly seconds: number
  readonly cancelled: () => boolean
}

export type Whole = {
  readonly chosen: readonly ShareColumn[]
  /** Over these sets there is no better sharing, to the tolerances of the solver. */
  readonly isBest: boolean
  /** Of all sharings of so many jobs over these sets, points; 0 where no number was given. */
  readonly costAtLeast: number
}

const WORTH = JOB_WORTH / POINTS_PER_YARDSTICK
/** Costs are whole points. */
const HALF_A_POINT = 0.5 / POINTS_PER_YARDSTICK
/** Of what the solver states when stopped early: no better is it meant to be. */
const OFF = 1e-6

export function wholeSharing(highs: Highs, ask: WholeAsk): Whole {
  return highs.withModel(programOf(highs, ask).model(true), (model) => {
    const stop = (event: { interrupt: () => void }) => {
      if (ask.cancelled()) event.interrupt()
    }
    model.options.set({ output_flag: false, time_limit: Math.max(0.1, ask.seconds) })
    model.options.set({ mip_rel_gap: 0, mip_abs_gap: HALF_A_POINT })
    model.setSolution({ colValue: startOf(ask) })
    const { simplexInterrupt, mipInterrupt } = highs.constants.callbackType
    model.run({ [simplexInterrupt]: stop, [mipInterrupt]: stop } as HighsCallbackMap)
    return read(highs, model, ask)
  })
}

function read({ constants }: Highs, model: Model, { problem, columns, start, jobs }: WholeAsk): Whole {
  const found = Number(model.info.get('primal_solution_status')) === FEASIBLE
  const { colValue } = model.getSolution()
  const stated = Number(model.info.get('mip_dual_bound')) * POINTS_PER_YARDSTICK
  return {
    chosen: found ? columns.filter((_, at) => (colValue[problem.jobCount + at] ?? 0) > 0.5) : start,
    isBest: model.getModelStatus() === constants.modelStatus.optimal,
    costAtLeast: jobs === null || !Number.isFinite(stated) ? 0 : Math.max(0, Math.floor(stated * (1 - OFF))),
  }
}

/** As HiGHS tells it. */
const FEASIBLE = 2

function programOf(highs: Highs, { problem, times, columns, jobs }: WholeAsk): SparseProgram {
  const program = new SparseProgram(highs)
  const ofGroup = problem.groups.map(() => program.row(0, 0))
  const ofTube = Array.from({ length: problem.tubeCount }, () => program.row(-highs.infinity, 1))
  const all = program.row(jobs ?? 0, jobs ?? highs.infinity)
  times.forEach((most, job) => {
    const own = problem.groups.flatMap((group, at): Entry[] => (group.job === job ? [[ofGroup[at] as number, -1]] : []))
    program.column({ cost: jobs === null ? -WORTH : 0, most, whole: true, entries: [...own, [all, 1]] })
  })
  for (const column of columns) {
    const tubes = column.tubes.map((tube): Entry => [ofTube[tube] as number, 1])
    const entries: Entry[] = [[ofGroup[column.group] as number, 1], ...tubes]
    program.column({ cost: costOf(column) / POINTS_PER_YARDSTICK, most: 1, whole: true, entries })
  }
  return program
}

function startOf({ problem, columns, start }: WholeAsk): number[] {
  const inStart = new Set(start)
  const sets = new Int32Array(problem.groups.length)
  for (const { group } of start) sets[group] = (sets[group] as number) + 1
  const ofJobs = Array.from({ length: problem.jobCount }, (_, job) => {
    const first = problem.groups.findIndex((group) => group.job === job)
    return sets[first] ?? 0
  })
  return [...ofJobs, ...columns.map((column) => (inStart.has(column) ? 1 : 0))]
}
