/**
 * The choice of sets as a linear or whole-number program for HiGHS:
 *
 *   minimise  sum of spread * chosen + singleCost * single
 *   for each point   chosen sets that hold it + single = 1
 *   for each cut     chosen sets that hold two of its three points <= 1
 *   number of chosen sets + shortfall within its range
 *
 * A shortfall costs more than any choice, so that there is always a choice
 * and a range that cannot be reached shows in its cost.
 *
 * Whatever points the duals price, a lower bound follows from them by plain
 * sums, so that no tolerance of the solver enters it.
 */
import loadHighs, { type Highs, type HighsCallbackMap, type Model } from 'highs'
import { type Cut, cutsByPoint, cutsHeld } from './cut-prices'

export type Column = { readonly members: readonly number[]; readonly spread: number }

/** How many sets are chosen, inclusive. */
export type Count = { readonly least: number; readonly most: number }

export type Relaxed = {
  readonly objective: number
  /** Of the number of sets; above 0 presses for more of them. */
  readonly countPrice: number
  /** By point, and by cut (never above 0). */
  readonly prices: Float64Array
  readonly cutPrices: Float64Array
  /** How far each column is chosen. */
  readonly chosen: Float64Array
}

export type Whole = {
  /** Places of the chosen columns; null when none was found in time. */
  readonly chosen: readonly number[] | null
  /** The cost where it was solved, to the tolerances of the solver; else what it proved in time. */
  readonly bound: number
}

export type Limits = { readonly seconds: () => number; readonly cancelled: () => boolean }

export type SetProblem = {
  readonly points: number
  readonly singleCost: number
  readonly columns: readonly Column[]
  readonly cuts: readonly Cut[]
  readonly count: Count
  /** Places of columns that are chosen already. */
  readonly fixed?: ReadonlySet<number>
}

let loaded: Promise<Highs> | null = null

/** Once for the thread: a solver that is loaded twice takes its memory twice. */
export function loadSolver(): Promise<Highs> {
  loaded ??= loadHighs()
  return loaded
}

export class SetProgram {
  constructor(
    private readonly highs: Highs,
    private readonly limits: Limits,
  ) {}

  /** null when time was up or it was cancelled. */
  relaxed(problem: SetProblem): Relaxed | null {
    return this.highs.withModel(this.modelOf(problem, false), (model) => {
      this.run(model, {})
      if (model.getModelStatus() !== this.highs.constants.modelStatus.optimal) return null
      const { colValue, rowDual } = model.getSolution()
      const { points, columns } = problem
      return {
        objective: model.getObjectiveValue(),
        prices: Float64Array.from(rowDual.subarray(0, points)),
        countPrice: rowDual[points] as number,
        cutPrices: Float64Array.from(rowDual.subarray(points + 1), (price) => Math.min(0, price)),
        chosen: Float64Array.from(colValue.subarray(0, columns.length)),
      }
    })
  }

  /** Looks for a choice below the ceiling only; `bound` is at most that. */
  whole(problem: SetProblem, ceiling: number, seconds: number): Whole {
    return this.highs.withModel(this.modelOf(problem, true), (model) => {
      // Costs are whole numbers, so a bound within one of the cost is the cost.
      this.run(model, { mip_rel_gap: 0, mip_abs_gap: 0.999, objective_bound: ceiling }, seconds)
      const status = model.getModelStatus()
      const { optimal, infeasible } = this.highs.constants.modelStatus
      const { colValue } = model.getSolution()
      const found = Number(model.info.get('primal_solution_status')) === 2
      const chosen = found ? [...problem.columns.keys()].filter((place) => (colValue[place] as number) > 0.5) : null
      if (status === infeasible) return { chosen: null, bound: ceiling }
      if (status === optimal) return { chosen, bound: Math.min(ceiling, Math.round(model.getObjectiveValue())) }
      const stated = Number(model.info.get('mip_dual_bound'))
      // Stopped early, it is taken with a millionth off: no better is it meant to be.
      return { chosen, bound: Math.min(ceiling, stated - 1e-6 * Math.abs(stated)) }
    })
  }

  private run(model: Model, options: Record<string, number>, seconds = Number.POSITIVE_INFINITY): void {
    const { simplexInterrupt, mipInterrupt, ipmInterrupt } = this.highs.constants.callbackType
    const stop = (event: { interrupt: () => void }) => {
      if (this.limits.cancelled() || this.limits.seconds() <= 0) event.interrupt()
    }
    const time = Math.max(0.001, Math.min(seconds, this.limits.seconds()))
    model.options.set({ output_flag: false, time_limit: time, ...options })
    model.run({ [simplexInterrupt]: stop, [ipmInterrupt]: stop, [mipInterrupt]: stop } as HighsCallbackMap)
  }

  private modelOf({ points, singleCost, columns, cuts, count, fixed }: SetProblem, whole: boolean) {
    const numCols = columns.length + points + 1
    const numRows = points + 1 + cuts.length
    const cutsOf = cutsByPoint(cuts)
    const starts = [0]
    const indices: number[] = []
    for (const { members } of columns) {
      indices.push(...members, points, ...cutsHeld(members, cutsOf).map((cut) => points + 1 + cut))
      starts.push(indices.length)
    }
    for (let point = 0; point < points; point += 1) {
      indices.push(point)
      starts.push(indices.length)
    }
    indices.push(points)
    starts.push(indices.length)
    const one = this.highs.constants.variableType[whole ? 'integer' : 'continuous']
    return {
      numCols,
      numRows,
      colCost: Float64Array.from([
        ...columns.map(({ spread }) => spread),
        ...new Array(points).fill(singleCost),
        2 * points * singleCost + 1,
      ]),
      colLower: Float64Array.from({ length: numCols }, (_, column) => (fixed?.has(column) ? 1 : 0)),
      colUpper: Float64Array.from({ length: numCols }, (_, column) => (column < numCols - 1 ? 1 : this.highs.infinity)),
      rowLower: Float64Array.from({ length: numRows }, (_, row) => {
        if (row === points) return count.least
        return row < points ? 1 : -this.highs.infinity
      }),
      rowUpper: Float64Array.from({ length: numRows }, (_, row) => (row === points ? count.most : 1)),
      matrix: {
        format: 'csc' as const,
        numRows,
        numCols,
        starts: Int32Array.from(starts),
        indices: Int32Array.from(indices),
        values: new Float64Array(indices.length).fill(1),
      },
      ...(whole ? { integrality: new Array(numCols).fill(one) } : {}),
    }
  }
}
