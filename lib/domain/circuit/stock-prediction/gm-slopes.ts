/**
 * How the transconductance of a tube moves with its voltages and its scales.
 *
 * By the voltages: central differences of 10 mV, good to 1e-6 of the slope with cutoffs
 * volts wide. By the scales: P is a factor, µ stands beside the grid volts in the drive
 * (tube-scales.ts), r takes the screen's share away.
 */
import { at } from '@/lib/domain/circuit/solver/dense-lu'
import { type AmplifyingParameters, curvesInto } from '@/lib/domain/model/plate-curves'
import { driveByMu } from '@/lib/domain/model/tube-scales'
import type { Desk } from './desk'

const STEP = 0.01

function gm(desk: Desk, tube: AmplifyingParameters, plate: number, screen: number, grid: number): number {
  curvesInto(tube, plate, screen, grid, desk.scratch)
  return at(desk.scratch, 3)
}

/** Siemens per volt and per unit of logarithm, into `desk.gmBy`. */
export function gmSlopes(desk: Desk, tube: AmplifyingParameters, plate: number, screen: number, grid: number): void {
  const { gmBy } = desk
  const spans = 1 / (2 * STEP)
  const pentode = tube.kind === 'pentode'
  gmBy[0] = (gm(desk, tube, plate + STEP, screen, grid) - gm(desk, tube, plate - STEP, screen, grid)) * spans
  gmBy[1] = pentode
    ? (gm(desk, tube, plate, screen + STEP, grid) - gm(desk, tube, plate, screen - STEP, grid)) * spans
    : 0
  const byGrid = (gm(desk, tube, plate, screen, grid + STEP) - gm(desk, tube, plate, screen, grid - STEP)) * spans
  gmBy[2] = byGrid
  const here = gm(desk, tube, plate, screen, grid)
  const cathode = at(desk.scratch, 0) + at(desk.scratch, 4)
  gmBy[3] = here
  gmBy[4] = -driveByMu(tube, plate, screen) * byGrid
  gmBy[5] = pentode && cathode > 0 ? (-here * at(desk.scratch, 4)) / cathode : 0
}
