/**
 * Currents a tube will draw at given electrode voltages, with a band.
 *
 * Two errors, taken as independent, both as standard deviations of ln I:
 *   the curves: `share` of the type inside its fitted rows, growing outside them by
 *     `growth` per unit of reach (fitted-curve.ts);
 *   the tube: from the covariance of its scales.
 * At a test point the curves were made to agree with the reading, so their error is nil
 * there and is taken to reach its whole size at a distance of one: the sum of
 * |ln(density ratio)|, |ln(screen volts ratio)| and |ln(plate volts ratio)| / 4. That
 * shape is a shop rule, no source; the size is measured on rows left out.
 * Screen current: the handbook's own figures are met to some 40 %, so that is added
 * unless the record holds a screen current.
 *
 * Band: 95 %, I·exp(± 2 u), from JCGM 100:2008 (6.2.1, k = 2) on the logarithm.
 */
import { type Amps, amps } from '../units'
import { currentDensity, reach } from './current-density'
import { type IndividualTube, scaleUncertainty, type TestPoint } from './individual-tube'
import { type LoggedPoint, loggedPoint } from './tube-scales'

export type BandedCurrent = {
  readonly value: Amps
  /** Standard deviation of its logarithm. */
  readonly share: number
  readonly low: Amps
  readonly high: Amps
}

export type PredictedIdle = {
  readonly plate: BandedCurrent
  readonly screen: BandedCurrent
  /** Shares of the plate current's error, before they are joined by the root of squares. */
  readonly curveShare: number
  readonly tubeShare: number
  /** The point lies outside the rows that were fitted by more than a factor 1.5. */
  readonly extrapolated: boolean
  readonly cutoffKnown: boolean
}

const COVERAGE = 2
const SCREEN_SHARE = 0.4
const FAR = Math.log(1.5)
/** Beyond this a band says nothing; it keeps its ends finite. */
const WIDEST_SHARE = 10

function banded(current: number, share: number): BandedCurrent {
  const bounded = Math.min(share, WIDEST_SHARE)
  return {
    value: amps(current),
    share: bounded,
    low: amps(current * Math.exp(-COVERAGE * bounded)),
    high: amps(current * Math.exp(COVERAGE * bounded)),
  }
}

const least = (value: number): number => Math.max(value, 1)
const apart = (a: number, b: number): number => Math.abs(Math.log(a / b))

const drawing = (tube: IndividualTube, point: TestPoint): number =>
  tube.type.parameters.kind === 'triode' ? point.plateToCathode : point.screenToCathode

const densityAt = (tube: IndividualTube, point: TestPoint, here: LoggedPoint): number =>
  currentDensity(here.plate + here.screen, drawing(tube, point))

function distance(tube: IndividualTube, from: TestPoint, to: TestPoint, density: number): number {
  const other = densityAt(tube, from, loggedPoint(tube.parameters, from))
  if (density <= 0 || other <= 0) return Number.POSITIVE_INFINITY
  return (
    apart(density, other) +
    apart(least(drawing(tube, to)), least(drawing(tube, from))) +
    apart(least(to.plateToCathode), least(from.plateToCathode)) / 4
  )
}

export function predictedIdle(tube: IndividualTube, point: TestPoint): PredictedIdle {
  const here = loggedPoint(tube.parameters, point)
  const density = densityAt(tube, point, here)
  const { type } = tube
  const outside = reach(density, type.coldest, type.hottest)
  const nearness = Math.min(1, ...tube.testPoints.map((from) => distance(tube, from, point, density)))
  const curveShare = nearness * Math.hypot(type.share, type.growth * outside)
  const tubeShare = scaleUncertainty(tube, here.plateSlopes)
  const screenTubeShare = scaleUncertainty(tube, here.screenSlopes)
  return {
    plate: banded(here.plate, Math.hypot(curveShare, tubeShare)),
    screen: banded(here.screen, Math.hypot(curveShare, screenTubeShare, nearness * SCREEN_SHARE)),
    curveShare,
    tubeShare,
    extrapolated: outside > FAR,
    cutoffKnown: type.cutoffKnown,
  }
}
