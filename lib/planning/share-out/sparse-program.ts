/** A minimising program for HiGHS, row by row and then column by column. */
import type { Highs } from 'highs'

export type Entry = readonly [row: number, value: number]

type ColumnOf = {
  readonly cost?: number
  readonly most: number
  readonly whole?: boolean
  readonly entries: readonly Entry[]
}

export class SparseProgram {
  private readonly lowest: number[] = []
  private readonly highest: number[] = []
  private readonly cost: number[] = []
  private readonly most: number[] = []
  private readonly whole: boolean[] = []
  private readonly starts = [0]
  private readonly indices: number[] = []
  private readonly values: number[] = []

  constructor(private readonly highs: Highs) {}

  row(lowest: number, highest: number): number {
    this.lowest.push(lowest)
    this.highest.push(highest)
    return this.lowest.length - 1
  }

  /** From 0 to `most`. */
  column({ cost = 0, most, whole = false, entries }: ColumnOf): number {
    this.cost.push(cost)
    this.most.push(most)
    this.whole.push(whole)
    for (const [row, value] of entries) {
      this.indices.push(row)
      this.values.push(value)
    }
    this.starts.push(this.indices.length)
    return this.cost.length - 1
  }

  /** `whole` false: without its whole numbers. */
  model(whole: boolean) {
    const { integer, continuous } = this.highs.constants.variableType
    const [numCols, numRows] = [this.cost.length, this.lowest.length]
    return {
      numCols,
      numRows,
      colCost: Float64Array.from(this.cost),
      colLower: new Float64Array(numCols),
      colUpper: Float64Array.from(this.most),
      rowLower: Float64Array.from(this.lowest),
      rowUpper: Float64Array.from(this.highest),
      matrix: {
        format: 'csc' as const,
        numRows,
        numCols,
        starts: Int32Array.from(this.starts),
        indices: Int32Array.from(this.indices),
        values: Float64Array.from(this.values),
      },
      ...(whole ? { integrality: this.whole.map((each) => (each ? integer : continuous)) } : {}),
    }
  }
}
