/**
 * Node voltages and misfit for a given set of tube currents.
 *
 * The misfit of an unknown is its value less what its tube passes at the voltages that
 * these currents leave it: zero at the operating point. `strength` multiplies every
 * tube's current; the solver's fallback raises it from 0 to 1.
 */
import { CURVE_NUMBERS, curvesInto, diodeDrop } from '@/lib/domain/model/plate-curves'
import { at } from './dense-lu'
import type { Wiring } from './wiring'

function placeSupply(wiring: Wiring, current: number): void {
  wiring.supplyCurrent = current
  wiring.rectifierDrop = 0
  wiring.supplySlope = wiring.supplyResistance
  if (wiring.rectifier !== null) {
    const { drop, slope } = diodeDrop(wiring.rectifier, current)
    wiring.rectifierDrop = drop
    // Exact for a 3/2 law; `slope` itself is capped near zero current, which would spoil Newton's last steps there.
    wiring.supplySlope += current > 0 ? drop / (1.5 * current) : slope
  }
  wiring.reservoir = wiring.supplyVolts - wiring.supplyResistance * current - wiring.rectifierDrop
}

/** The plates and, with a primary tap, the screens of one side hang on its half of the primary. */
function placeSide(wiring: Wiring, x: Float64Array, side: number): void {
  let plates = 0
  let screens = 0
  for (let i = 0; i < wiring.count; i++) {
    if (wiring.side[i] !== side) continue
    plates += at(x, 2 * i)
    screens += at(x, 2 * i + 1)
  }
  const half = at(wiring.half, side)
  const tapped = wiring.feed === 'primary-tap' ? screens : 0
  const tapNode = wiring.reservoir - wiring.tap * half * (plates + tapped)
  wiring.tapNode[side] = tapNode
  wiring.plateNode[side] = tapNode - (1 - wiring.tap) * half * plates
}

/** Reservoir, screen node, taps and plates. */
export function placeCommonNodes(wiring: Wiring, x: Float64Array): void {
  let plates = 0
  let screens = wiring.feedDrawn
  for (let i = 0; i < wiring.count; i++) {
    plates += at(x, 2 * i)
    screens += at(x, 2 * i + 1)
  }
  const ownSupply = wiring.feed === 'own-supply'
  placeSupply(wiring, wiring.drawn + plates + (ownSupply ? 0 : screens))
  placeSide(wiring, x, 0)
  placeSide(wiring, x, 1)
  wiring.screenNode = (ownSupply ? wiring.feedVolts : wiring.reservoir) - wiring.feedResistance * screens
}

function placeCathodes(wiring: Wiring, x: Float64Array): void {
  wiring.groupNode.fill(0)
  for (let i = 0; i < wiring.count; i++) {
    const group = wiring.group[i] as number
    const rise = at(wiring.groupResistance, group) * (at(x, 2 * i) + at(x, 2 * i + 1))
    wiring.groupNode[group] = at(wiring.groupNode, group) + rise
  }
  for (let i = 0; i < wiring.count; i++) {
    const own = at(wiring.senseResistance, i) * (at(x, 2 * i) + at(x, 2 * i + 1))
    wiring.cathode[i] = at(wiring.groupNode, wiring.group[i] as number) + own
  }
}

/** Returns the sum of squared misfits, A². */
export function placeNodes(wiring: Wiring, x: Float64Array, strength: number): number {
  placeCommonNodes(wiring, x)
  placeCathodes(wiring, x)
  const { curves, misfit } = wiring
  const tapFed = wiring.feed === 'primary-tap'
  let squares = 0
  for (let i = 0; i < wiring.count; i++) {
    const side = wiring.side[i] as number
    const cathode = at(wiring.cathode, i)
    const from = tapFed ? at(wiring.tapNode, side) : wiring.screenNode
    const screen = from - at(wiring.screenResistance, i) * at(x, 2 * i + 1)
    wiring.screen[i] = screen
    const tube = wiring.parameters[i]
    if (tube === undefined) throw new Error(`Tube ${i} of ${wiring.count} is missing`)
    curvesInto(
      tube,
      at(wiring.plateNode, side) - cathode,
      screen - cathode,
      at(wiring.grid, i) - cathode,
      curves,
      i * CURVE_NUMBERS,
    )
    const plateMisfit = at(x, 2 * i) - strength * at(curves, i * CURVE_NUMBERS)
    const screenMisfit = at(x, 2 * i + 1) - strength * at(curves, i * CURVE_NUMBERS + 4)
    misfit[2 * i] = plateMisfit
    misfit[2 * i + 1] = screenMisfit
    squares += plateMisfit * plateMisfit + screenMisfit * screenMisfit
  }
  return squares
}
