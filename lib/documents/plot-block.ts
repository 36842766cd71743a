/** A curve sheet as a block of a paper: small, so with fewer curves than on the screen and without the glass. */
import { type Axis, shareOf } from '@/lib/domain/plot/axis'
import type { Frame, PlotPoint } from '@/lib/domain/plot/frame'
import type { GridCurve } from '@/lib/domain/plot/grid-family'
import type { OperatingPoint } from '@/lib/domain/plot/operating-point'
import type { PlateSheet } from '@/lib/domain/plot/plate-sheet'
import { acrossTitle, plotDescription, plotLegend, pointNames, screenText, tickText } from '@/lib/domain/plot/plot-text'
import { pointClusters } from '@/lib/domain/plot/point-clusters'
import type { Words } from '@/lib/domain/words'
import type { PlotBlock, PlotCurve, PlotMark, PlotName, PlotPlace, PlotTick } from './paper'

/** Labels at 8.5 points have room for so many. */
const MOST_CURVES = 8

/** Of the frame: closer together, points share a name tag. */
const NEAR = 0.08

/** A tenth of a thousandth of the frame is finer than a printer's dot. */
const share = (axis: Axis, value: number): number => Number(shareOf(axis, value).toFixed(4))
const placeIn =
  ({ across, up }: Frame) =>
  (point: PlotPoint): PlotPlace => [share(across, point.across), share(up, point.up)]

const ticks = (axis: Axis): PlotTick[] => axis.ticks.map((tick) => ({ at: share(axis, tick), label: tickText(tick) }))

/** Every other one, the hottest among them: a load line ends on it. */
function fewer(curves: readonly GridCurve[]): readonly GridCurve[] {
  return curves.length <= MOST_CURVES ? curves : curves.filter((_, i) => (curves.length - 1 - i) % 2 === 0)
}

const curveOf =
  (frame: Frame) =>
  ({ gridVolts, line, leaves }: GridCurve): PlotCurve => ({
    label: tickText(gridVolts),
    line: line.map(placeIn(frame)),
    leaves,
  })

function markOf(frame: Frame, point: OperatingPoint): PlotMark {
  const place = placeIn(frame)
  const { left, right, bottom, top } = point.box
  return {
    shape: point.when === 'before' ? 'open' : 'filled',
    at: place(point.at),
    box: [place({ across: left, up: bottom }), place({ across: right, up: top })],
  }
}

function names({ whole: { frame }, points }: PlateSheet): PlotName[] {
  const place = placeIn(frame)
  const apart = (one: PlotPoint, other: PlotPoint): number => {
    const [[x, y], [u, v]] = [place(one), place(other)]
    return Math.hypot(x - u, y - v)
  }
  return pointClusters(points, apart, NEAR).map(({ at, when, sockets }) => ({
    label: pointNames(sockets, when),
    at: place(at),
    // Work mostly makes a stage colder: what was before lies above.
    side: when === 'after' ? 'below' : 'above',
  }))
}

export function plotBlock(sheet: PlateSheet, words: Words): PlotBlock {
  const { frame, curves, heat } = sheet.whole
  const place = placeIn(frame)
  return {
    type: 'plot',
    title: `${sheet.designation}: ${words.plate} curves of an average ${words.tube}. ${screenText(sheet)}.`,
    spoken: plotDescription(sheet, words),
    acrossTitle: acrossTitle(words),
    upUnit: 'mA',
    curvesTitle: 'Grid V',
    acrossTicks: ticks(frame.across),
    upTicks: ticks(frame.up),
    curves: fewer(curves).map(curveOf(frame)),
    limit: heat && { line: heat.line.map(place), region: heat.region.map(place) },
    load: (sheet.loadPath?.points ?? []).map(place),
    marks: sheet.points.map((point) => markOf(frame, point)),
    names: names(sheet),
    legend: plotLegend(sheet, words),
  }
}
