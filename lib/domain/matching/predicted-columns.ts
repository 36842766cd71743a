/**
 * What every tube of a stock would do in one amplifier, a column for each figure: a number a
 * tube instead of an object a tube, because a stock is long and several amplifiers are kept.
 *
 * Columns stand in the order of the stock (`StockInOrder`). A, S and W.
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

export type PredictedColumns = Readonly<Record<Figure, Float64Array>> & {
  /** One of STANDS. */
  readonly stands: Uint8Array
  /** Why it cannot be said, a whole sentence; by tube id. */
  readonly refusals: Map<string, string>
}

export function openColumns(size: number): PredictedColumns {
  const columns = Object.fromEntries(FIGURES.map((name) => [name, new Float64Array(size)]))
  return { ...(columns as Record<Figure, Float64Array>), stands: new Uint8Array(size), refusals: new Map() }
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
  columns.stands[place] = extrapolated ? STANDS.extrapolated : STANDS.said
  setBand([columns.current, columns.currentLow, columns.currentHigh], place, plateCurrent)
  setBand([columns.slope, columns.slopeLow, columns.slopeHigh], place, transconductance)
  setBand([columns.power, columns.powerLow, columns.powerHigh], place, plateDissipation)
  columns.byReadings[place] = byReadings
  columns.byCarrying[place] = byCarrying ?? 0
}

type BandColumns = readonly [value: Float64Array, low: Float64Array, high: Float64Array]

function setBand([values, lows, highs]: BandColumns, place: number, { value, low, high }: Band): void {
  values[place] = value
  lows[place] = low
  highs[place] = high
}

const bandAt = ([values, lows, highs]: BandColumns, place: number): Band => ({
  value: values[place] as number,
  low: lows[place] as number,
  high: highs[place] as number,
})

export const isSaid = ({ stands }: PredictedColumns, place: number): boolean =>
  stands[place] === STANDS.said || stands[place] === STANDS.extrapolated

/** null: nothing can be said of it. */
export function predictedAt(columns: PredictedColumns | null, place: number): PredictedTube | null {
  if (!columns || !isSaid(columns, place)) return null
  const byCarrying = columns.byCarrying[place] as number
  return {
    plateCurrent: bandAt([columns.current, columns.currentLow, columns.currentHigh], place),
    byReadings: amps(columns.byReadings[place] as number),
    ...(byCarrying > 0 ? { byCarrying: amps(byCarrying) } : {}),
    transconductance: bandAt([columns.slope, columns.slopeLow, columns.slopeHigh], place),
    plateDissipation: bandAt([columns.power, columns.powerLow, columns.powerHigh], place),
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
  const moved = openColumns(from.length)
  for (const [id, why] of columns.refusals) moved.refusals.set(id, why)
  for (const id of gone) moved.refusals.delete(id)
  const runs = runsOf(from)
  for (const name of FIGURES) copyRuns(moved[name], columns[name], runs)
  copyRuns(moved.stands, columns.stands, runs)
  return moved
}
