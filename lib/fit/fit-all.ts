/**
 * Everything the program keeps of a fit: parameters per curve, how many rows stand behind
 * them, whether they fix the cutoff, and how far the curve may be off.
 *
 * Model error (standard deviation of ln Ia) of a curve, from leaving rows out:
 *   share² = (Σ own errors² + 4·pooled²) / (own rows + 4)
 * so a curve with few rows leans on all output types together. Rows that lie further
 * outside the others than a factor 1.5 are extrapolation and counted in the growth:
 *   total² = share² + (growth·reach)²,
 * growth being the root mean square of error/reach over the single-row trials.
 */
import type { FittedCurve, ModelErrors } from '@/lib/domain/model/fitted-curve'
import { HANDBOOK } from '@/lib/domain/tube/handbook'
import { DOUBTFUL } from './doubtful-rows'
import { fitType } from './fit-type'
import { densityRange, type LeftOut, leaveOneOut, singleRowTrial } from './leave-one-out'
import { type ModelRow, modelRows } from './model-row'
import { isOutputRow, isPutAside, rowName } from './put-aside'

const FAR = Math.log(1.5)
const POOL_WEIGHT = 4
/** The coldest fitted row must lie at or below this share of the hottest to fix the cutoff. */
const CUTOFF_SPAN = 2 / 3

const rms = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, one) => sum + one * one, 0) / values.length)

export const isFitted = (row: ModelRow): boolean => !isPutAside(row) && !DOUBTFUL.has(rowName(row))

export function rowsByCurve(rows: readonly ModelRow[]): ReadonlyMap<string, readonly ModelRow[]> {
  const curves = new Map<string, ModelRow[]>()
  for (const row of rows) curves.set(row.key, [...(curves.get(row.key) ?? []), row])
  return curves
}

export const fittedRows = (): ReadonlyMap<string, readonly ModelRow[]> => rowsByCurve(modelRows().filter(isFitted))

export function cutoffKnown(rows: readonly ModelRow[]): boolean {
  const { coldest, hottest } = densityRange(rows)
  return coldest <= CUTOFF_SPAN * hottest
}

const near = (one: LeftOut): boolean => one.reach <= FAR
const isOutput = (rows: readonly ModelRow[]): boolean => rows.some(isOutputRow)

function ownShare(errors: readonly number[], pooled: number): number {
  const own = errors.reduce((sum, one) => sum + one * one, 0)
  return Math.sqrt((own + POOL_WEIGHT * pooled * pooled) / (errors.length + POOL_WEIGHT))
}

/** Rounded to what a fit on another machine must reproduce. */
const rounded = (value: number): number => Number(value.toPrecision(6))

function roundedNumbers<T extends object>(values: T): T {
  return Object.fromEntries(
    Object.entries(values).map(([name, value]) => [name, typeof value === 'number' ? rounded(value) : value]),
  ) as T
}

export function diodeCurves(): Record<string, { readonly kind: 'diode'; readonly k: number }> {
  const curves = HANDBOOK.flatMap((type) =>
    type.rows.flatMap(({ figures: { dropVolts, dropMilliampsPerPlate } }) =>
      dropVolts && dropMilliampsPerPlate
        ? [[type.id, { kind: 'diode', k: rounded(dropMilliampsPerPlate[0] / 1000 / dropVolts[0] ** 1.5) }] as const]
        : [],
    ),
  )
  return Object.fromEntries(curves)
}

export type FittedTable = {
  readonly errors: ModelErrors
  readonly curves: Readonly<Record<string, FittedCurve>>
  readonly diodes: ReturnType<typeof diodeCurves>
}

export function fitAll(): FittedTable {
  const curves = [...fittedRows()]
  const judged = curves.map(([key, rows]) => ({ key, rows, left: leaveOneOut(rows) }))
  const outputs = judged.filter(({ rows }) => isOutput(rows))
  const pooled = rms(outputs.flatMap(({ left }) => left.filter(near).map((one) => one.error)))
  const trials = outputs.flatMap(({ rows }) => singleRowTrial(rows)).filter((one) => !near(one))
  const growth = rms(trials.map((one) => one.error / one.reach))
  const entries = judged.map(({ key, rows, left }): [string, FittedCurve] => {
    const errors = left.filter(near).map((one) => one.error)
    const { coldest, hottest } = densityRange(rows)
    const numbers = { coldest, hottest, share: ownShare(errors, pooled) }
    return [
      key,
      {
        parameters: roundedNumbers(fitType(rows)),
        rows: rows.length,
        cutoffKnown: cutoffKnown(rows),
        ...roundedNumbers(numbers),
      },
    ]
  })
  return {
    errors: roundedNumbers({ pooledShare: pooled, growth }),
    curves: Object.fromEntries(entries),
    diodes: diodeCurves(),
  }
}
