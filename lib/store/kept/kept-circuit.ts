/** What every tube of a kept stock would do in one amplifier: worked out once, and anew only for tubes that changed. */
import type { ComparedFigures } from '@/lib/domain/matching/line-up'
import {
  movedColumns,
  openColumns,
  type PredictedColumns,
  STANDS,
  setPredicted,
} from '@/lib/domain/matching/predicted-columns'
import { movedTwice } from '@/lib/domain/matching/runs'
import { type ChangedStock, type StockInOrder, tubeAt } from '@/lib/domain/matching/stock-in-order'
import { proposableOf } from '@/lib/domain/stock/proposable-of'
import type { TubePredictor } from '@/lib/domain/stock/stock-predictions'
import { KeptFigures } from './kept-figures'
import type { Slices } from './slices'

export type PredictedStock = { readonly predicted: PredictedColumns; readonly figures: ComparedFigures }

/** A stock with what the choice itself does not look at; A by place, NaN where it was not read. */
export type ReadStock = { readonly stock: StockInOrder; readonly screenCurrent: Float64Array }

export class KeptCircuit {
  private columns: PredictedColumns
  private readonly figures = new KeptFigures()
  /** Changes of the stock since it was asked about last. */
  private behind: { readonly from: Int32Array; readonly gone: Set<string> } | null = null

  constructor(
    private readonly predictor: TubePredictor,
    size: number,
  ) {
    this.columns = openColumns(size)
  }

  get size(): number {
    return this.columns.stands.length
  }

  /** Followed only when the circuit is asked about: columns are many, and most circuits are not asked about again soon. */
  moveTo({ from }: ChangedStock, gone: Iterable<string>): void {
    const ids = this.behind?.gone ?? new Set<string>()
    for (const id of gone) ids.add(id)
    this.behind = { from: this.behind ? movedTwice(this.behind.from, from) : from, gone: ids }
  }

  private follow(stock: StockInOrder): void {
    if (!this.behind) return
    const { from, gone } = this.behind
    this.columns = movedColumns(this.columns, from, gone)
    this.figures.moveTo({ stock, from })
    this.behind = null
  }

  /** `compared`: the same stock, its readings carried over to one instrument; every tube as at the call before. */
  async complete(read: ReadStock, compared: StockInOrder, slices: Slices): Promise<PredictedStock> {
    this.follow(read.stock)
    const { stands } = this.columns
    for (let place = 0; place < stands.length; place += 1) {
      if (stands[place] !== STANDS.open) continue
      const tube = proposableOf(tubeAt(compared, place), read.screenCurrent[place] as number)
      setPredicted(this.columns, place, read.stock.tubeIds[place] as string, tube && this.predictor(tube))
      await slices.pause()
    }
    return { predicted: this.columns, figures: this.figures.laidOut(read.stock, this.columns) }
  }
}
