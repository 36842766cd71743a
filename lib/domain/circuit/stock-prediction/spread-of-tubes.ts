/**
 * What every tube in the stage, and the doubt about it, does to the solved circuit: the
 * terms of circuit-bands.ts, from the analytic slopes instead of solving the stage anew.
 */
import { at } from '@/lib/domain/circuit/solver/dense-lu'
import {
  curveShare,
  type Mark,
  markOf,
  nearness,
  outsideBy,
  screenOnlyShare,
  testMarks,
} from '@/lib/domain/model/curve-doubt'
import type { IndividualTube } from '@/lib/domain/model/individual-tube'
import { CURVE_NUMBERS } from '@/lib/domain/model/plate-curves'
import { driveByMu } from '@/lib/domain/model/tube-scales'
import type { TypeModel } from '@/lib/domain/model/type-model'
import type { Desk } from './desk'

/** A tube in its socket. `tests`: where it was tested (curve-doubt.ts). Of the covariance: one number per pair of scales. */
export type Seated = {
  readonly type: TypeModel
  readonly tests: readonly Mark[]
  readonly pp: number
  readonly pMu: number
  readonly pR: number
  readonly muMu: number
  readonly muR: number
  readonly rr: number
}

const entry = (tube: IndividualTube, i: number, j: number): number => tube.covariance[i]?.[j] ?? 0

export const seatedTube = (tube: IndividualTube): Seated => ({
  type: tube.type,
  tests: testMarks(tube),
  pp: entry(tube, 0, 0),
  pMu: entry(tube, 0, 1),
  pR: entry(tube, 0, 2),
  muMu: entry(tube, 1, 1),
  muR: entry(tube, 1, 2),
  rr: entry(tube, 2, 2),
})

/** As circuit-bands.ts has it: beyond this a band says nothing. */
export const WIDEST = 10
export const FAR = Math.log(1.5)

export const plateToCathodeOf = ({ wiring }: Desk, i: number): number =>
  at(wiring.plateNode, wiring.side[i] as number) - at(wiring.cathode, i)
export const screenToCathodeOf = ({ wiring }: Desk, i: number): number => at(wiring.screen, i) - at(wiring.cathode, i)
export const gridToCathodeOf = ({ wiring }: Desk, i: number): number => at(wiring.grid, i) - at(wiring.cathode, i)

function layDoubt(desk: Desk, i: number, seated: Seated, plateVolts: number, screenVolts: number): number {
  const { type, tests } = seated
  const { currents } = desk.wiring
  const mark = markOf(type, plateVolts, screenVolts, at(currents, 2 * i) + at(currents, 2 * i + 1))
  const near = nearness(tests, mark)
  const outside = outsideBy(type, mark)
  desk.curveShare[i] = Math.min(curveShare(type, outside, near), WIDEST)
  desk.screenOnly[i] = screenOnlyShare(near)
  return outside
}

/** Tube i at the solution that the wiring holds. Returns how far outside its fitted rows it stands. */
export function layTubeSlopes(desk: Desk, i: number, seated: Seated | null): number {
  const { wiring } = desk
  const parameters = wiring.parameters[i]
  if (!parameters) throw new Error(`Tube ${i} of ${wiring.count} is missing`)
  const plateVolts = plateToCathodeOf(desk, i)
  const screenVolts = screenToCathodeOf(desk, i)
  const plate = at(wiring.currents, 2 * i)
  const screen = at(wiring.currents, 2 * i + 1)
  const drive = driveByMu(parameters, plateVolts, screenVolts)
  desk.plateByMu[i] = -drive * at(wiring.curves, i * CURVE_NUMBERS + 3)
  desk.screenByMu[i] = -drive * at(wiring.curves, i * CURVE_NUMBERS + 7)
  const share = plate + screen > 0 ? screen / (plate + screen) : 0
  desk.screenPerCathode[i] = share
  desk.byShare[i] = plate * share
  return seated ? layDoubt(desk, i, seated, plateVolts, screenVolts) : 0
}

/** Adds tube i to the shared terms of one answer and returns its own variance. Slopes by ln P, ln µ and ln r. */
function addTube(desk: Desk, i: number, seated: Seated, byP: number, byMu: number, byR: number): number {
  const { sharedCurves, sharedScreens } = desk
  const curves = desk.curves[i] as number
  const byScreen = (byR + at(desk.screenPerCathode, i) * byP) * at(desk.screenOnly, i)
  sharedCurves[curves] = at(sharedCurves, curves) + byP * at(desk.curveShare, i)
  sharedScreens[curves] = at(sharedScreens, curves) + byScreen
  const { pp, pMu, pR, muMu, muR, rr } = seated
  return byP * (byP * pp + 2 * (byMu * pMu + byR * pR)) + byMu * (byMu * muMu + 2 * byR * muR) + byR * byR * rr
}

/**
 * Variance of one answer, in its own unit, from all the tubes. `own`: the tube whose answer
 * it is, where the answer depends on its scales other than through the currents (gm): then
 * `desk.gmBy` is added.
 */
export function varianceByTubes(desk: Desk, seats: readonly (Seated | null)[], from: number, own: number): number {
  const { pulls, sharedCurves, sharedScreens, gmBy, plateByMu, screenByMu, byShare } = desk
  const { count, currents } = desk.wiring
  sharedCurves.fill(0)
  sharedScreens.fill(0)
  let variance = 0
  for (let i = 0; i < count; i++) {
    const seated = seats[i]
    if (!seated) continue
    const byPlate = at(pulls, from + 2 * i)
    const byScreen = at(pulls, from + 2 * i + 1)
    const isOwn = i === own ? 1 : 0
    const byP = byPlate * at(currents, 2 * i) + byScreen * at(currents, 2 * i + 1) + isOwn * at(gmBy, 3)
    const byMu = byPlate * at(plateByMu, i) + byScreen * at(screenByMu, i) + isOwn * at(gmBy, 4)
    const byR = (byScreen - byPlate) * at(byShare, i) + isOwn * at(gmBy, 5)
    variance += addTube(desk, i, seated, byP, byMu, byR)
  }
  for (let k = 0; k < count; k++) variance += at(sharedCurves, k) ** 2 + at(sharedScreens, k) ** 2
  return variance
}
