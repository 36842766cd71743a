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
import { curveShare, markOf, nearness, outsideBy, screenOnlyShare, testMarks } from './curve-doubt'
import { type IndividualTube, scaleUncertainty, type TestPoint } from './individual-tube'
import { loggedPoint } from './tube-scales'

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

export function predictedIdle(tube: IndividualTube, point: TestPoint): PredictedIdle {
  const here = loggedPoint(tube.parameters, point)
  const { type } = tube
  const mark = markOf(type, point.plateToCathode, point.screenToCathode, here.plate + here.screen)
  const outside = outsideBy(type, mark)
  const near = nearness(testMarks(tube), mark)
  const curves = curveShare(type, outside, near)
  const tubeShare = scaleUncertainty(tube, here.plateSlopes)
  const screenTubeShare = scaleUncertainty(tube, here.screenSlopes)
  return {
    plate: banded(here.plate, Math.hypot(curves, tubeShare)),
    screen: banded(here.screen, Math.hypot(curves, screenTubeShare, screenOnlyShare(near))),
    curveShare: curves,
    tubeShare,
    extrapolated: outside > FAR,
    cutoffKnown: type.cutoffKnown,
  }
}
