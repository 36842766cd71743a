/**
 * The sharing over the sets known so far, as a linear program for HiGHS:
 *
 *   maximise  Σ worth·y_j − Σ cost_c·x_c
 *   each group of job j:  Σ x_c − y_j = 0      (dual v_g, free)
 *   each tube:            Σ x_c ≤ 1            (dual u_i ≥ 0)
 *   all jobs:             Σ y_j ≤ most         (dual w ≥ 0)
 *   0 ≤ x, 0 ≤ y_j ≤ the number of jobs alike that j stands for (alike-jobs.ts)
 *
 * In yardsticks, so that figures stay near one. Solved as the minimum of the negative.
 */
import type { Highs } from 'highs'
import { POINTS_PER_YARDSTICK } from '@/lib/domain/matching/search/spread-cost'
import { costOf, JOB_WORTH, type ShareColumn, type ShareProblem } from '../share-problem'

export type Duals = {
  /** For each tube of the stock, points, not negative. */
  readonly tubes: Float64Array
  /** For each group, points: what it pays for a set. */
  readonly groups: Float64Array
  readonly jobs: number
}

type Model = ReturnType<Highs['createModel']>

const WORTH = JOB_WORTH / POINTS_PER_YARDSTICK
/** Of HiGHS: from one optimum to the next after columns were added. */
const PRIMAL_SIMPLEX = 4

/**
 * Kept between rounds: the next optimum is sought from the last. Rows: groups, then tubes, then
 * the one over all jobs. Columns: jobs, then sets in the order they were added. Holds memory of
 * the solver: dispose of it.
 */
export class MasterProgram {
  private readonly model: Model
  private readonly columns: ShareColumn[] = []
  private readonly groups: number
  private readonly rows: number

  constructor(
    private readonly highs: Highs,
    private readonly problem: ShareProblem,
    private readonly times: readonly number[],
  ) {
    this.groups = problem.groups.length
    this.rows = this.groups + problem.tubeCount + 1
    this.model = this.jobsOnly()
    this.model.options.set({ output_flag: false })
  }

  dispose(): void {
    this.model.dispose()
  }

  add(columns: readonly ShareColumn[]): void {
    for (const column of columns) {
      const { group, tubes } = column
      const indices = [group, ...tubes.map((tube) => this.groups + tube)]
      const entries = { indices, values: indices.map(() => 1) }
      // Its tubes keep it to 1; were that a bound of its own, part of its price would hide in it.
      this.model.addCol(costOf(column) / POINTS_PER_YARDSTICK, 0, this.highs.infinity, entries)
      this.columns.push(column)
    }
  }

  /** No more jobs than this can be served. */
  atMost(jobs: number): void {
    this.model.changeRowBounds(this.rows - 1, -this.highs.infinity, jobs)
  }

  /** The prices at the best fractional sharing. */
  relaxed(): Duals {
    this.model.run()
    this.model.options.set({ simplex_strategy: PRIMAL_SIMPLEX })
    const { rowDual } = this.model.getSolution()
    // Of a minimum: a row that must not rise has a dual of at most 0.
    const priced = (row: number) => Math.max(0, -(rowDual[row] ?? 0)) * POINTS_PER_YARDSTICK
    return {
      tubes: Float64Array.from({ length: this.problem.tubeCount }, (_, tube) => priced(this.groups + tube)),
      groups: Float64Array.from({ length: this.groups }, (_, at) => (rowDual[at] ?? 0) * POINTS_PER_YARDSTICK),
      jobs: priced(this.rows - 1),
    }
  }

  /** How much of each set the last fractional sharing takes, in the order they were added. */
  taken(): readonly { readonly column: ShareColumn; readonly part: number }[] {
    const { colValue } = this.model.getSolution()
    return this.columns.map((column, at) => ({ column, part: colValue[this.problem.jobCount + at] ?? 0 }))
  }

  /** From now on these sets are taken for certain; all others are free again. */
  certain(columns: ReadonlySet<ShareColumn>): void {
    this.columns.forEach((column, at) => {
      this.model.changeColBounds(this.problem.jobCount + at, columns.has(column) ? 1 : 0, this.highs.infinity)
    })
  }

  private jobsOnly(): Model {
    const { highs, problem, rows, groups } = this
    const jobs = problem.jobCount
    const starts = [0]
    const indices: number[] = []
    const values: number[] = []
    for (let job = 0; job < jobs; job += 1) {
      problem.groups.forEach((group, at) => {
        if (group.job !== job) return
        indices.push(at)
        values.push(-1)
      })
      indices.push(rows - 1)
      values.push(1)
      starts.push(indices.length)
    }
    return highs.createModel({
      numCols: jobs,
      numRows: rows,
      colCost: Array<number>(jobs).fill(-WORTH),
      colLower: Array<number>(jobs).fill(0),
      colUpper: [...this.times],
      rowLower: Array.from({ length: rows }, (_, row) => (row < groups ? 0 : -highs.infinity)),
      rowUpper: Array.from({ length: rows }, (_, row) => {
        if (row < groups) return 0
        return row === rows - 1 ? this.times.reduce((sum, each) => sum + each, 0) : 1
      }),
      matrix: { format: 'csc', numRows: rows, numCols: jobs, starts, indices, values },
    })
  }
}
