/**
 * What a parameter set says for an operating row, beside what the row prints.
 *
 * Fixed bias: currents and slopes at the printed voltages. Where the row prints a cathode
 * resistor and no grid volts, the resistor is what is given and the current what is asked:
 *   Vk = R·(Ia + Ig2)(Va, Vg2, −Vk)
 * is solved, as the tube in the socket does. That forgives errors of the curves by
 * 1 + gm·R, about threefold; `predictAtPrintedGrid` shows them unforgiven.
 */
import { type AmplifyingParameters, CURVE_NUMBERS, curvesInto } from '@/lib/domain/model/plate-curves'
import type { ModelRow, SelfBias } from './model-row'

export type RowPrediction = {
  readonly ia: number
  readonly ig2: number
  readonly gm: number
  readonly rp: number
  readonly mu: number
}

const scratch = new Float64Array(CURVE_NUMBERS)
const at = (index: number): number => scratch[index] ?? Number.NaN

/** In triode connection plate and screen act as one electrode: currents and slopes add. */
function predict(
  tube: AmplifyingParameters,
  row: ModelRow,
  plate: number,
  screen: number,
  grid: number,
): RowPrediction {
  curvesInto(tube, plate, screen, grid, scratch)
  if (row.connection === 'pentode') return { ia: at(0), ig2: at(4), gm: at(3), rp: 1 / at(1), mu: at(3) / at(1) }
  const slope = at(1) + at(2) + at(5) + at(6)
  const gm = at(3) + at(7)
  return { ia: at(0) + at(4), ig2: 0, gm, rp: 1 / slope, mu: gm / slope }
}

const NEWTON_STEPS = 60
const SETTLED_VOLTS = 1e-10

/** Vk − R·Ik(Vk) rises with slope above one, so Newton between two bounds always ends. */
function cathodeVolts(tube: AmplifyingParameters, row: ModelRow, self: SelfBias): number {
  const moves = self.movesElectrodes ? 1 : 0
  let low = 0
  let high = row.plate
  let vk = -row.grid
  for (let step = 0; step < NEWTON_STEPS; step++) {
    const lift = (vk + row.grid) * moves
    curvesInto(tube, row.plate - lift, row.screen - lift, -vk, scratch)
    const excess = vk - self.ohms * (at(0) + at(4))
    if (excess > 0) high = vk
    else low = vk
    const slope = 1 + self.ohms * (at(3) + at(7) + moves * (at(1) + at(2) + at(5) + at(6)))
    const next = vk - excess / slope
    const inside = next > low && next < high ? next : (low + high) / 2
    if (Math.abs(inside - vk) < SETTLED_VOLTS) return inside
    vk = inside
  }
  return vk
}

export const predictAtPrintedGrid = (tube: AmplifyingParameters, row: ModelRow): RowPrediction =>
  predict(tube, row, row.plate, row.screen, row.grid)

export function predictRow(tube: AmplifyingParameters, row: ModelRow): RowPrediction {
  if (row.selfBias === null) return predictAtPrintedGrid(tube, row)
  const vk = cathodeVolts(tube, row, row.selfBias)
  const lift = row.selfBias.movesElectrodes ? vk + row.grid : 0
  return predict(tube, row, row.plate - lift, row.screen - lift, -vk)
}
