/**
 * How many jobs can be served at all, match aside: a small integer program.
 *
 *   y_k   how many jobs of a kind are served: of those that take their sets out of the same boxes
 *   z_sb  sets of one size that jobs of a kind take out of box b (limit-boxes.ts)
 *   f_bt  tube t goes into a set out of box b
 *
 *   each set that a kind wants:  Σ_b z_sb − y_k = 0
 *   each box:                    Σ_t f_bt − Σ_s size_s·z_sb = 0
 *   each tube:                   Σ_b f_bt ≤ 1
 *   all jobs:                    Σ_k y_k ≥ so many
 *
 * Any tubes of a box make a set, so whole y and z are enough: what is left is a flow, which then
 * has a whole solution too. It asks for no best, only whether so many can be served; no to n
 * proves that at most n − 1 can. What a set may cost to buy is left aside: that can only raise
 * the number, so the bound holds, and sets that cost too much are not given out.
 *
 * Yes and no are those of the solver, to its tolerances (a millionth of a tube).
 */
import type { Highs, HighsCallbackMap, Model } from 'highs'
import { bestSet } from '@/lib/domain/matching/search/best-set'
import { columnOf, type ShareColumn, type ShareGroup, type ShareProblem } from '../share-problem'
import { type Entry, SparseProgram } from '../sparse-program'
import { type BoxPool, boxPool } from './box-pool'

export type JobsAsk = {
  readonly problem: ShareProblem
  /** How many alike jobs each job stands for. */
  readonly times: readonly number[]
  readonly secondsLeft: () => number
  readonly cancelled: () => boolean
}

/** A set that each job of a kind wants. */
type Slot = { readonly count: number; readonly boxes: readonly number[] }

type Kind = {
  /** Groups of each job, one for each slot; as often as the job stands for. */
  readonly jobs: (readonly number[])[]
  readonly slots: readonly Slot[]
}

type Built = {
  readonly program: SparseProgram
  /** Columns of sets, by kind, slot and box of the slot. */
  readonly sets: readonly (readonly (readonly number[])[])[]
  /** Columns of the tubes of each box. */
  readonly tubes: readonly (readonly number[])[]
}

/** Of a whole number in a solution. */
const WHOLE = 1e-6

export class JobsProgram {
  private readonly kinds: readonly Kind[]

  /** null: so many tubes make too many boxes. */
  static of(highs: Highs, ask: JobsAsk): JobsProgram | null {
    const pool = boxPool(ask.problem)
    return pool && new JobsProgram(highs, ask, pool)
  }

  private constructor(
    private readonly highs: Highs,
    private readonly ask: JobsAsk,
    private readonly pool: BoxPool,
  ) {
    this.kinds = kindsOf(ask, pool)
  }

  /** No more than these can be served: by the tubes there are, and by the program without its whole numbers. */
  relaxedMost(): number {
    const byTubes = this.mostByTubes()
    if (!this.pool.isComplete) return byTubes
    return this.solved(0, false, (model, optimal) =>
      optimal ? Math.min(byTubes, Math.floor(WHOLE - model.getObjectiveValue())) : byTubes,
    )
  }

  /** A way to serve so many; `no`: there is none; null: not settled. */
  serving(jobs: number): readonly ShareColumn[] | 'no' | null {
    const { infeasible } = this.highs.constants.modelStatus
    return this.solved(jobs, true, (model, optimal, built) => {
      if (optimal) return this.given(built, model.getSolution().colValue)
      return this.pool.isComplete && model.getModelStatus() === infeasible ? 'no' : null
    })
  }

  /** The smallest jobs first. */
  private mostByTubes(): number {
    const sizes = this.kinds.flatMap(({ jobs, slots }) =>
      jobs.map(() => slots.reduce((sum, { count }) => sum + count, 0)),
    )
    let [left, most] = [this.pool.usable, 0]
    for (const size of sizes.sort((a, b) => a - b)) {
      left -= size
      if (left < 0) break
      most += 1
    }
    return most
  }

  private solved<T>(jobs: number, whole: boolean, read: (model: Model, optimal: boolean, built: Built) => T): T {
    const { modelStatus, callbackType } = this.highs.constants
    const built = this.built(jobs)
    return this.highs.withModel(built.program.model(whole), (model) => {
      const stop = (event: { interrupt: () => void }) => {
        if (this.ask.cancelled()) event.interrupt()
      }
      model.options.set({ output_flag: false, time_limit: Math.max(0.1, this.ask.secondsLeft()) })
      model.run({ [callbackType.simplexInterrupt]: stop, [callbackType.mipInterrupt]: stop } as HighsCallbackMap)
      return read(model, model.getModelStatus() === modelStatus.optimal, built)
    })
  }

  private built(jobs: number): Built {
    const { infinity } = this.highs
    const program = new SparseProgram(this.highs)
    const total = program.row(jobs, infinity)
    const ofTube = Array.from({ length: this.ask.problem.tubeCount }, () => program.row(-infinity, 1))
    const ofBox = this.pool.boxes.map(() => program.row(0, 0))
    const sets = this.kinds.map((kind) => this.columnsOfKind(program, kind, total, ofBox))
    const tubes = this.pool.boxes.map(({ tubes: inside }, box) =>
      inside.map((tube) => {
        const entries: Entry[] = [
          [ofTube[tube] as number, 1],
          [ofBox[box] as number, 1],
        ]
        return program.column({ most: 1, entries })
      }),
    )
    return { program, sets, tubes }
  }

  private columnsOfKind(program: SparseProgram, { jobs, slots }: Kind, total: number, ofBox: readonly number[]) {
    const rows = slots.map(() => program.row(0, 0))
    const own = rows.map((row): Entry => [row, -1])
    program.column({ cost: -1, most: jobs.length, whole: true, entries: [[total, 1], ...own] })
    return slots.map(({ count, boxes }, slot) =>
      boxes.map((box) => {
        const inside = this.pool.boxes[box]?.tubes.length ?? 0
        const entries: Entry[] = [
          [rows[slot] as number, 1],
          [ofBox[box] as number, -count],
        ]
        return program.column({ most: Math.min(jobs.length, Math.floor(inside / count)), whole: true, entries })
      }),
    )
  }

  /** null when a set costs more to buy than it may. */
  private given({ sets, tubes }: Built, values: Float64Array): readonly ShareColumn[] | null {
    const free = this.pool.boxes.map(
      (box, at) => new Set(box.tubes.filter((_, place) => (values[tubes[at]?.[place] as number] as number) > 0.5)),
    )
    const columns: ShareColumn[] = []
    for (const [kind, { jobs, slots }] of this.kinds.entries()) {
      for (const [slot, { boxes }] of slots.entries()) {
        const from = boxes.flatMap((box, at) => {
          const times = Math.round(values[sets[kind]?.[slot]?.[at] as number] as number)
          return Array<number>(times).fill(box)
        })
        for (const [served, box] of from.entries()) {
          const inside = free[box] as Set<number>
          const column = bestOf(this.ask.problem, jobs[served]?.[slot] as number, inside)
          if (!column) return null
          for (const tube of column.tubes) inside.delete(tube)
          columns.push(column)
        }
      }
    }
    return columns
  }
}

/** The best set of these tubes. */
function bestOf(problem: ShareProblem, at: number, among: ReadonlySet<number>): ShareColumn | null {
  const { index, tubes, query } = problem.groups[at] as ShareGroup
  const set = bestSet(index, { ...query, excluded: Uint8Array.from(tubes, (tube) => (among.has(tube) ? 0 : 1)) })
  return set && columnOf(problem, at, set)
}

function kindsOf({ problem, times }: JobsAsk, { boxes }: BoxPool): Kind[] {
  const reach: number[][] = problem.groups.map(() => [])
  boxes.forEach(({ groups }, box) => {
    for (const group of groups) reach[group]?.push(box)
  })
  const kinds = new Map<string, Kind>()
  times.forEach((most, job) => {
    const groups = problem.groups.flatMap((group, at) => (group.job === job ? [at] : []))
    const slots = groups.map((at): Slot => ({ count: problem.groups[at]?.query.count ?? 0, boxes: reach[at] ?? [] }))
    const key = JSON.stringify(slots)
    const kind = kinds.get(key) ?? { jobs: [], slots }
    for (let time = 0; time < most; time += 1) kind.jobs.push(groups)
    kinds.set(key, kind)
  })
  return [...kinds.values()]
}
