/**
 * The choice of sets without its whole numbers (set-program.ts tells the rows), kept between
 * rounds: the next optimum is sought from the last. Columns: points left single, the shortfall, then
 * sets; rows: points, the count, then cuts. Holds memory of the solver: dispose of it.
 */
import type { Highs, HighsCallbackMap } from 'highs'
import { type Cut, cutsByPoint, cutsHeld } from './cut-prices'
import type { Column, Count, Limits, Relaxed } from './set-program'

type Model = ReturnType<Highs['createModel']>

/** Of HiGHS: from one optimum to the next after columns were added. */
const PRIMAL_SIMPLEX = 4
const DUAL_SIMPLEX = 1

export class RelaxedSets {
  private readonly model: Model
  private columns: Column[] = []
  private cuts: Cut[] = []

  constructor(
    private readonly highs: Highs,
    private readonly limits: Limits,
    private readonly points: number,
    singleCost: number,
    count: Count,
  ) {
    this.model = highs.createModel(emptyModel(highs, points, singleCost, count))
    this.model.options.set({ output_flag: false })
  }

  dispose(): void {
    this.model.dispose()
  }

  add(columns: readonly Column[]): void {
    const byPoint = cutsByPoint(this.cuts)
    for (const column of columns) {
      const { members, spread } = column
      const cuts = cutsHeld(members, byPoint).map((cut) => this.points + 1 + cut)
      const indices = [...members, this.points, ...cuts]
      this.model.addCol(spread, 0, this.highs.infinity, { indices, values: indices.map(() => 1) })
      this.columns.push(column)
    }
    this.model.options.set({ simplex_strategy: PRIMAL_SIMPLEX })
  }

  cut(cuts: readonly Cut[]): void {
    for (const cut of cuts) {
      const points = new Set(cut)
      const held = this.columns.flatMap(({ members }, at) =>
        members.filter((point) => points.has(point)).length >= 2 ? [this.points + 1 + at] : [],
      )
      this.model.addRow(-this.highs.infinity, 1, { indices: held, values: held.map(() => 1) })
      this.cuts.push(cut)
    }
    this.model.options.set({ simplex_strategy: DUAL_SIMPLEX })
  }

  /** null when time was up or it was cancelled. */
  solve(): Relaxed | null {
    const { simplexInterrupt, ipmInterrupt } = this.highs.constants.callbackType
    const stop = (event: { interrupt: () => void }) => {
      if (this.limits.cancelled() || this.limits.seconds() <= 0) event.interrupt()
    }
    this.model.run({ [simplexInterrupt]: stop, [ipmInterrupt]: stop } as HighsCallbackMap)
    if (this.model.getModelStatus() !== this.highs.constants.modelStatus.optimal) return null
    const { colValue, rowDual } = this.model.getSolution()
    const { points, columns } = this
    return {
      objective: this.model.getObjectiveValue(),
      prices: Float64Array.from(rowDual.subarray(0, points)),
      countPrice: rowDual[points] as number,
      cutPrices: Float64Array.from(rowDual.subarray(points + 1), (price) => Math.min(0, price)),
      chosen: Float64Array.from(colValue.subarray(points + 1, points + 1 + columns.length)),
    }
  }
}

function emptyModel(highs: Highs, points: number, singleCost: number, { least, most }: Count) {
  const numCols = points + 1
  const numRows = points + 1
  return {
    numCols,
    numRows,
    colCost: Float64Array.from({ length: numCols }, (_, at) =>
      at < points ? singleCost : 2 * points * singleCost + 1,
    ),
    colLower: new Float64Array(numCols),
    colUpper: new Float64Array(numCols).fill(highs.infinity),
    rowLower: Float64Array.from({ length: numRows }, (_, row) => (row < points ? 1 : least)),
    rowUpper: Float64Array.from({ length: numRows }, (_, row) => (row < points ? 1 : most)),
    matrix: {
      format: 'csc' as const,
      numRows,
      numCols,
      starts: Int32Array.from({ length: numCols + 1 }, (_, at) => at),
      indices: Int32Array.from({ length: numCols }, (_, at) => at),
      values: new Float64Array(numCols).fill(1),
    },
  }
}
