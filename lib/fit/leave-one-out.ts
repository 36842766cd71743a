/**
 * How well rows that were not fitted are met.
 *
 * Leave-one-out: each row of a curve is predicted from a fit to the others. Where the row
 * lies far outside what remains it asks for extrapolation, and `reach` says how far.
 * Single-row trial: a curve fitted to its hottest row alone predicts the others; what
 * it misses per unit of reach is what a type with one row must allow for.
 */
import { currentDensity, reach } from '@/lib/domain/model/current-density'
import type { AmplifyingParameters } from '@/lib/domain/model/plate-curves'
import { fitType } from './fit-type'
import type { ModelRow } from './model-row'
import { predictRow } from './row-prediction'

/** Rows a type must have to be judged by leaving one out. */
export const JUDGED_FROM = 4

export const densityOf = (row: ModelRow): number => currentDensity(row.ia + (row.ig2 ?? 0), row.screen)

export function densityRange(rows: readonly ModelRow[]): { coldest: number; hottest: number } {
  const densities = rows.map(densityOf)
  return { coldest: Math.min(...densities), hottest: Math.max(...densities) }
}

export function reachOf(row: ModelRow, from: readonly ModelRow[]): number {
  const { coldest, hottest } = densityRange(from)
  return reach(densityOf(row), coldest, hottest)
}

export type LeftOut = {
  readonly row: ModelRow
  readonly tube: AmplifyingParameters
  /** ln(model/printed) of the plate current. */
  readonly error: number
  readonly reach: number
}

function leftOut(row: ModelRow, tube: AmplifyingParameters, others: readonly ModelRow[]): LeftOut {
  return { row, tube, error: Math.log(predictRow(tube, row).ia / row.ia), reach: reachOf(row, others) }
}

export function leaveOneOut(rows: readonly ModelRow[]): readonly LeftOut[] {
  if (rows.length < JUDGED_FROM) return []
  return rows.map((row) => {
    const others = rows.filter((other) => other !== row)
    return leftOut(row, fitType(others), others)
  })
}

export function singleRowTrial(rows: readonly ModelRow[]): readonly LeftOut[] {
  if (rows.length < JUDGED_FROM) return []
  const hottest = rows.reduce((a, b) => (densityOf(b) > densityOf(a) ? b : a))
  const tube = fitType([hottest])
  return rows.filter((row) => row !== hottest).map((row) => leftOut(row, tube, [hottest]))
}
