/** Errors of one row in one role, in per cent, as the report prints them. */
import type { AmplifyingParameters } from '@/lib/domain/model/plate-curves'
import { DOUBTFUL } from './doubtful-rows'
import { fittedRows, rowsByCurve } from './fit-all'
import { fitType } from './fit-type'
import { leaveOneOut, reachOf } from './leave-one-out'
import { type ModelRow, modelRows } from './model-row'
import { isPutAside, rowName } from './put-aside'
import { predictAtPrintedGrid, predictRow } from './row-prediction'

export type Role = 'fitted' | 'left-out' | 'put-aside' | 'doubtful'

export type RowErrors = {
  readonly role: Role
  readonly row: ModelRow
  /** Per cent, model above print positive. Null where the row prints no such figure. */
  readonly ia: number
  readonly ig2: number | null
  readonly gm: number | null
  readonly rp: number | null
  /** Ia at the grid volts that the printed currents make over the printed resistor; null for fixed bias. */
  readonly iaAtPrintedGrid: number | null
  /** That where there is one, `ia` elsewhere: no row forgiven by its resistor. */
  readonly iaUnforgiven: number
  /** Logarithmic distance outside the rows that were fitted; 0 inside. */
  readonly reach: number
}

const percent = (model: number, printed: number): number => (model / printed - 1) * 100
const percentOrNull = (model: number, printed: number | null): number | null =>
  printed === null ? null : percent(model, printed)

function errorsOf(role: Role, row: ModelRow, tube: AmplifyingParameters, reach: number): RowErrors {
  const model = predictRow(tube, row)
  const ia = percent(model.ia, row.ia)
  const iaAtPrintedGrid = row.selfBias ? percent(predictAtPrintedGrid(tube, row).ia, row.ia) : null
  return {
    role,
    row,
    ia,
    ig2: percentOrNull(model.ig2, row.ig2),
    gm: percentOrNull(model.gm, row.gm),
    rp: percentOrNull(model.rp, row.rp),
    iaAtPrintedGrid,
    iaUnforgiven: iaAtPrintedGrid ?? ia,
    reach,
  }
}

function curveErrors(fitted: readonly ModelRow[], all: readonly ModelRow[]): RowErrors[] {
  const tube = fitType(fitted)
  const judged = (role: Role) => (row: ModelRow) => errorsOf(role, row, tube, reachOf(row, fitted))
  return [
    ...fitted.map(judged('fitted')),
    ...leaveOneOut(fitted).map((one) => errorsOf('left-out', one.row, one.tube, one.reach)),
    ...all.filter(isPutAside).map(judged('put-aside')),
    ...all.filter((row) => DOUBTFUL.has(rowName(row))).map(judged('doubtful')),
  ]
}

export function allRowErrors(): ReadonlyMap<string, readonly RowErrors[]> {
  const all = rowsByCurve(modelRows())
  return new Map([...fittedRows()].map(([key, rows]) => [key, curveErrors(rows, all.get(key) ?? [])]))
}
