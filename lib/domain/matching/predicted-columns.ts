/**
 * What every tube of a stock would do in one amplifier, a column for each figure: a number a
 * tube instead of an object a tube, because a stock is long and several amplifiers are kept.
 *
 * Places are those of the stock (`StockInOrder`); each has a row of figures, A, S and W. Rows are
 * only ever added, so the columns of a stock that changed share those of before, and what was
 * handed out stays as it was.
 */
import type { Band } from '../circuit/band'
import { fail, ok, type Result } from '../result'
import { amps } from '../units'
import type { PredictedTube, Predictions } from './predicted-tube'
import { copyRuns, runsOf } from './runs'
import type { StockInOrder } from './stock-in-order'

export const STANDS = {
  /** Not worked out yet. */
  open: 0,
  said: 1,
  /** Said, though well outside the printed rows of its type. */
  extrapolated: 2,
  refused: 3,
  /** No test to predict from. */
  untested: 4,
} as const

/** In the order of a row. */
const FIGURES = [
  'current',
  'currentLow',
  'currentHigh',
  'byReadings',
  'byCarrying',
  'slope',
  'slopeLow',
  'slopeHigh',
  'power',
  'powerLow',
  'powerHigh',
] as const

type Figure = (typeof FIGURES)[number]

type Rows = { figures: Readonly<Record<Figure, Float64Array>>; used: number }

export type PredictedColumns = {
  /** By place, one of STANDS. */
  readonly stands: Uint8Array
  /** By place; means nothing where nothing is said. */
  readonly rowOf: Int32Array
  readonly rows: Rows
  /** Why it cannot be said, a whole sentence; by tube id. */
  readonly refusals: Map<string, string>
}

export const openColumns = (size: number): PredictedColumns => ({
  stands: new Uint8Array(size),
  rowOf: new Int32Array(size),
  rows: { figures: emptyFigures(size), used: 0 },
  refusals: new Map(),
})

const emptyFigures = (size: number) =>
  Object.fromEntries(FIGURES.map((name) => [name, new Float64Array(size)])) as Record<Figure, Float64Array>

/** A column, to be read by `rowOf`. */
export const columnOf = ({ rows }: PredictedColumns, name: Figure): Float64Array => rows.figures[name]

/** Where something is said. */
export const figureAt = ({ rows, rowOf }: PredictedColumns, name: Figure, place: number): number =>
  rows.figures[name][rowOf[place] as number] as number

/** More rows than these per place, and those no longer in use are dropped. */
const MOST_ROWS = 1.25

function newRow(rows: Rows): number {
  if (rows.used === rows.figures.current.length) {
    const larger = emptyFigures(Math.ceil(MOST_ROWS * rows.used) + 64)
    for (const name of FIGURES) larger[name].set(rows.figures[name])
    rows.figures = larger
  }
  rows.used += 1
  return rows.used - 1
}

/** null: it has no test to predict from. */
export function setPredicted(
  columns: PredictedColumns,
  place: number,
  tubeId: string,
  found: Result<PredictedTube, string> | null,
): void {
  columns.refusals.delete(tubeId)
  if (!found?.ok) {
    columns.stands[place] = found ? STANDS.refused : STANDS.untested
    if (found) columns.refusals.set(tubeId, found.fault)
    return
  }
  const { plateCurrent, byReadings, byCarrying, transconductance, plateDissipation, extrapolated } = found.value
  const row = newRow(columns.rows)
  const { figures } = columns.rows
  columns.stands[place] = extrapolated ? STANDS.extrapolated : STANDS.said
  columns.rowOf[place] = row
  setBand([figures.current, figures.currentLow, figures.currentHigh], row, plateCurrent)
  setBand([figures.slope, figures.slopeLow, figures.slopeHigh], row, transconductance)
  setBand([figures.power, figures.powerLow, figures.powerHigh], row, plateDissipation)
  figures.byReadings[row] = byReadings
  figures.byCarrying[row] = byCarrying ?? 0
}

type BandColumns = readonly [value: Float64Array, low: Float64Array, high: Float64Array]

function setBand([values, lows, highs]: BandColumns, row: number, { value, low, high }: Band): void {
  values[row] = value
  lows[row] = low
  highs[row] = high
}

const bandAt = ([values, lows, highs]: BandColumns, row: number): Band => ({
  value: values[row] as number,
  low: lows[row] as number,
  high: highs[row] as number,
})

export const isSaid = ({ stands }: PredictedColumns, place: number): boolean =>
  stands[place] === STANDS.said || stands[place] === STANDS.extrapolated

/** null: nothing can be said of it. */
export function predictedAt(columns: PredictedColumns | null, place: number): PredictedTube | null {
  if (!columns || !isSaid(columns, place)) return null
  const { figures } = columns.rows
  const row = columns.rowOf[place] as number
  const byCarrying = figures.byCarrying[row] as number
  return {
    plateCurrent: bandAt([figures.current, figures.currentLow, figures.currentHigh], row),
    byReadings: amps(figures.byReadings[row] as number),
    ...(byCarrying > 0 ? { byCarrying: amps(byCarrying) } : {}),
    transconductance: bandAt([figures.slope, figures.slopeLow, figures.slopeHigh], row),
    plateDissipation: bandAt([figures.power, figures.powerLow, figures.powerHigh], row),
    extrapolated: columns.stands[place] === STANDS.extrapolated,
  }
}

/** As `Predictions` has it for one tube; undefined: it is not in them. */
export function answerAt(
  columns: PredictedColumns,
  place: number,
  tubeId: string,
): Result<PredictedTube, string> | undefined {
  const found = predictedAt(columns, place)
  if (found) return ok(found)
  const refusal = columns.refusals.get(tubeId)
  return refusal === undefined ? undefined : fail(refusal)
}

export function columnsOf({ tubeIds }: StockInOrder, { ofTube }: Predictions): PredictedColumns {
  const columns = openColumns(tubeIds.length)
  tubeIds.forEach((tubeId, place) => {
    setPredicted(columns, place, tubeId, ofTube.get(tubeId) ?? null)
  })
  return columns
}

/** After a change of the stock (`ChangedStock.from`): what is new is open. `gone`: ids that no longer stand as they did. */
export function movedColumns(columns: PredictedColumns, from: Int32Array, gone: Iterable<string>): PredictedColumns {
  const runs = runsOf(from)
  const moved = {
    stands: new Uint8Array(from.length),
    rowOf: new Int32Array(from.length),
    rows: columns.rows,
    refusals: new Map(columns.refusals),
  }
  for (const id of gone) moved.refusals.delete(id)
  copyRuns(moved.rowOf, columns.rowOf, runs)
  copyRuns(moved.stands, columns.stands, runs)
  return columns.rows.used > MOST_ROWS * from.length + 64 ? withoutSpareRows(moved) : moved
}

function withoutSpareRows(columns: PredictedColumns): PredictedColumns {
  const figures = emptyFigures(columns.stands.length)
  const rowOf = new Int32Array(columns.stands.length)
  let used = 0
  for (let place = 0; place < rowOf.length; place += 1) {
    if (!isSaid(columns, place)) continue
    for (const name of FIGURES)
      figures[name][used] = columns.rows.figures[name][columns.rowOf[place] as number] as number
    rowOf[place] = used++
  }
  return { ...columns, rowOf, rows: { figures, used } }
}
