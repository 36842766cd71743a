/**
 * The ruled frame of a curve sheet and lines drawn in it.
 *
 * Across: plate-to-cathode volts, V. Up: plate current of one tube, mA.
 */
import { type Axis, shareOf } from './axis'

export type PlotPoint = { readonly across: number; readonly up: number }
/** At least two points, from left to right. */
export type PlotLine = readonly PlotPoint[]
export type Frame = { readonly across: Axis; readonly up: Axis }

export const inFrame = ({ across, up }: Frame, point: PlotPoint): boolean =>
  point.across >= across.from && point.across <= across.to && point.up >= up.from && point.up <= up.to

const SAMPLES = 160
const HALVINGS = 40
/** Of the frame's height and width: a tenth of a line's own breadth on paper. */
const STRAIGHT = 0.0003

/** Closer together at the left, where plate curves bend. */
const sampleAt = ({ from, to }: Axis, i: number): number => from + (to - from) * (i / SAMPLES) ** 1.6

/** Where the curve goes in or out between two places of which one is inside. */
function crossing(frame: Frame, upAt: (across: number) => number, inside: number, outside: number): PlotPoint {
  let [within, beyond] = [inside, outside]
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (within + beyond) / 2
    if (upWithin(frame, upAt(middle))) within = middle
    else beyond = middle
  }
  const { from, to } = frame.up
  return { across: within, up: Math.abs(upAt(within) - to) < Math.abs(upAt(within) - from) ? to : from }
}

const upWithin = ({ up }: Frame, value: number): boolean => value >= up.from && value <= up.to

/** The parts of a curve that lie inside, cut where it crosses the lower or upper edge. */
export function linesIn(frame: Frame, upAt: (across: number) => number): PlotLine[] {
  const lines: PlotPoint[][] = []
  let open: PlotPoint[] | null = null
  for (let i = 0; i <= SAMPLES; i++) {
    const across = sampleAt(frame.across, i)
    const up = upAt(across)
    const inside = upWithin(frame, up)
    const before = sampleAt(frame.across, i - 1)
    if (inside && open === null) {
      open = i === 0 ? [] : [crossing(frame, upAt, across, before)]
      lines.push(open)
    }
    if (inside) open?.push({ across, up })
    else if (open) {
      open.push(crossing(frame, upAt, before, across))
      open = null
    }
  }
  return lines.filter((line) => line.length >= 2).map((line) => thinned(frame, line))
}

/** Ramer's and Douglas' and Peucker's method: points are left out that lie on the straight line of their neighbours. */
export function thinned(frame: Frame, line: PlotLine): PlotLine {
  const [first, last] = [line[0], line.at(-1)]
  if (!first || !last || line.length <= 2) return line
  const offs = line.map((point) => offLine(frame, first, last, point))
  const worst = offs.indexOf(Math.max(...offs))
  if ((offs[worst] ?? 0) <= STRAIGHT) return [first, last]
  return [...thinned(frame, line.slice(0, worst + 1)).slice(0, -1), ...thinned(frame, line.slice(worst))]
}

function offLine({ across, up }: Frame, a: PlotPoint, b: PlotPoint, point: PlotPoint): number {
  const place = (one: PlotPoint) => [shareOf(across, one.across), shareOf(up, one.up)] as const
  const [[ax, ay], [bx, by], [px, py]] = [place(a), place(b), place(point)]
  const length = Math.hypot(bx - ax, by - ay)
  return length === 0 ? Math.hypot(px - ax, py - ay) : Math.abs((bx - ax) * (py - ay) - (by - ay) * (px - ax)) / length
}
