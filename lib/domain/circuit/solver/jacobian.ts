/**
 * How the misfits answer to the unknown currents, from the tubes' analytic slopes:
 *   J = 1 + strength·G·R,
 * G the slopes of each tube by its plate, screen and grid, R the wiring (wiring.ts), to
 * which the supply adds its own slope for every current that it carries.
 */
import { CURVE_NUMBERS } from '@/lib/domain/model/plate-curves'
import { at } from './dense-lu'
import { MOST_UNKNOWNS, type Wiring } from './wiring'

/** Row of one current of tube i: its three slopes stand at `slopes` in `curves`, the row goes to `start` in `out`. */
function fillRow(wiring: Wiring, i: number, slopes: number, strength: number, out: Float64Array, start: number): void {
  const { curves, plateBy, screenBy, cathodeBy, supplySlope } = wiring
  const byPlate = strength * at(curves, slopes)
  const byScreen = strength * at(curves, slopes + 1)
  const byGrid = strength * at(curves, slopes + 2)
  const screenHangs = wiring.feed === 'own-supply' ? 0 : 1
  const throughPlates = supplySlope * (byPlate + screenHangs * byScreen)
  const throughScreens = screenHangs * throughPlates
  for (let j = 0; j < wiring.count; j++) {
    const from = i * MOST_UNKNOWNS + 2 * j
    const to = start + 2 * j
    out[to] = byPlate * at(plateBy, from) + byScreen * at(screenBy, from) + byGrid * at(cathodeBy, from) + throughPlates
    out[to + 1] =
      byPlate * at(plateBy, from + 1) +
      byScreen * at(screenBy, from + 1) +
      byGrid * at(cathodeBy, from + 1) +
      throughScreens
  }
}

/** At the voltages that `placeNodes` left behind. Rows of `stride` numbers. */
export function fillJacobian(wiring: Wiring, strength: number, out: Float64Array, stride: number): void {
  for (let i = 0; i < wiring.count; i++) {
    fillRow(wiring, i, i * CURVE_NUMBERS + 1, strength, out, 2 * i * stride)
    fillRow(wiring, i, i * CURVE_NUMBERS + 5, strength, out, (2 * i + 1) * stride)
  }
  for (let k = 0; k < 2 * wiring.count; k++) out[k * stride + k] = at(out, k * stride + k) + 1
}
