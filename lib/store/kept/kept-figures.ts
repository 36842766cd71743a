/** The compared figures of a kept stock, laid out when they are asked for: anew, or after a single change from those before it. */
import { type ComparedFigures, comparedFigures, movedFigures } from '@/lib/domain/matching/line-up'
import type { PredictedColumns } from '@/lib/domain/matching/predicted-columns'
import type { ChangedStock, StockInOrder } from '@/lib/domain/matching/stock-in-order'

export class KeptFigures {
  /** Null: to be laid out. */
  private figures: ComparedFigures | null = null
  /** Since the figures were laid out. */
  private change: ChangedStock | null = null

  moveTo(change: ChangedStock): void {
    if (this.change) this.figures = null
    this.change = change
  }

  /** Of the stock as it is after the last change. `predicted`: null at the test point, and then always. */
  laidOut(stock: StockInOrder, predicted: PredictedColumns | null): ComparedFigures {
    const { figures, change } = this
    if (figures && !change) return figures
    this.figures = figures && change ? movedFigures(figures, change, predicted) : comparedFigures(stock, predicted)
    this.change = null
    return this.figures
  }
}
