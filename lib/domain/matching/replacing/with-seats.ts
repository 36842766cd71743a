/**
 * A stock that is laid out, with those tubes of a set that lie in no drawer of it any more: fitted
 * already, sold, or kept under another type. They take no part in anything but their own set: they
 * do not count where it is asked which instrument most of the stock was read on.
 *
 * What was handed in stays as it is.
 */
import type { Candidate, Carrying } from '@/lib/domain/matching/candidate'
import { carriedStock, instrumentsOf } from '@/lib/domain/matching/carried-stock'
import { asRead } from '@/lib/domain/matching/carried-test'
import { instrumentKey } from '@/lib/domain/matching/cohort'
import { movedFigures, type Running } from '@/lib/domain/matching/line-up'
import { movedColumns, type PredictedColumns, setPredicted } from '@/lib/domain/matching/predicted-columns'
import type { PredictedTube } from '@/lib/domain/matching/predicted-tube'
import { type ChangedStock, placeFor, type StockInOrder, withChanges } from '@/lib/domain/matching/stock-in-order'
import type { Result } from '@/lib/domain/result'

type Named = Pick<Candidate, 'tubeId' | 'mark'>

/** null: it does not lie there. */
export function placeIn(stock: StockInOrder, tube: Named): number | null {
  const place = placeFor(stock, tube)
  return stock.tubeIds[place] === tube.tubeId ? place : null
}

/** The same carrying, with the instrument named that the stock was carried to. */
export function carryingWith({ stock }: Running, carrying: Carrying): Carrying {
  if (carrying.corrections.length === 0) return carrying
  const [first] = instrumentsOf(stock, carrying)
  const { to } = carrying
  const isNamed = first && (to === undefined || instrumentKey(first.instrument) === instrumentKey(to))
  return isNamed ? { ...carrying, to: first.instrument } : carrying
}

export type Seats = {
  /** As read; each once, and none that lies in the stock. */
  readonly tubes: readonly Candidate[]
  /** With the instrument that the stock was carried to. */
  readonly carrying: Carrying
  /** By tube id; of use where the stock was predicted. */
  readonly ofTube: ReadonlyMap<string, Result<PredictedTube, string>>
}

export function withSeats(running: Running, { tubes, carrying, ofTube }: Seats): Running {
  if (tubes.length === 0) return running
  const change = withChanges(asReadStock(running.stock), new Set(), tubes)
  const stock = carriedStock(change.stock, carrying, running.predicted ? 'everywhere' : 'same-point')
  const predicted = running.predicted && withPredicted(running.predicted, change, ofTube)
  return { stock, predicted, ...movedFigures(running, { ...change, stock }, predicted) }
}

/** Kinds of its own, so that those of the stock that was handed in do not grow. */
function asReadStock(stock: StockInOrder): StockInOrder {
  const kinds = stock.kinds.map((kind) => (kind.test?.carried ? { ...kind, test: asRead(kind.test) } : kind))
  const own = { ...stock, kinds, kindNumbers: new Map(stock.kindNumbers) }
  if (kinds.every((kind, at) => kind === stock.kinds[at])) return own
  const [microamps, microsiemens] = [stock.microamps.slice(), stock.microsiemens.slice()]
  for (let place = 0; place < microamps.length; place += 1) {
    const carried = stock.kinds[stock.kindOf[place] as number]?.test?.carried
    if (!carried) continue
    microamps[place] = Math.round(1e6 * (stock.plateCurrent[place] as number))
    if (carried.slope) microsiemens[place] = Math.round(1e6 * (stock.transconductance[place] as number))
  }
  return { ...own, microamps, microsiemens }
}

function withPredicted(
  before: PredictedColumns,
  { stock, from }: ChangedStock,
  ofTube: Seats['ofTube'],
): PredictedColumns {
  const moved = movedColumns(before, from, [])
  const columns = { ...moved, rows: { figures: copied(moved.rows.figures), used: moved.rows.used } }
  from.forEach((old, place) => {
    const tubeId = stock.tubeIds[place] as string
    if (old < 0) setPredicted(columns, place, tubeId, ofTube.get(tubeId) ?? null)
  })
  return columns
}

/** Rows of a stock are shared by all its states and only ever grow: these are not to be among them. */
const copied = <T extends Readonly<Record<string, Float64Array>>>(figures: T): T =>
  Object.fromEntries(Object.entries(figures).map(([name, column]) => [name, column.slice()])) as unknown as T
