/**
 * The curve of constant plate dissipation, I = P/V, and the region of the frame
 * above it: hotter than the printed rating.
 */
import { type Frame, linesIn, type PlotLine, type PlotPoint } from './frame'

export type HeatLimit = {
  readonly watts: number
  /** From upper left to lower right. Empty: the whole frame is on one side. */
  readonly line: PlotLine
  /** Corners of the hotter region, in turn; empty when none of the frame is hotter. */
  readonly region: readonly PlotPoint[]
}

export function heatLimit(frame: Frame, watts: number): HeatLimit {
  if (!(watts > 0)) throw new Error(`A rating must be above zero, got ${watts} W`)
  const { across, up } = frame
  const milliampsAt = (volts: number): number => (volts <= 0 ? Number.POSITIVE_INFINITY : (1000 * watts) / volts)
  const line = linesIn(frame, milliampsAt)[0] ?? []
  return { watts, line, region: hotter(frame, line, milliampsAt(across.to) <= up.from) }
}

function hotter({ across, up }: Frame, line: PlotLine, all: boolean): PlotPoint[] {
  const corner = (side: 'from' | 'to', height: 'from' | 'to') => ({ across: across[side], up: up[height] })
  const [first, last] = [line[0], line.at(-1)]
  if (!first || !last)
    return all ? [corner('from', 'from'), corner('from', 'to'), corner('to', 'to'), corner('to', 'from')] : []
  return [
    ...line,
    ...(last.across < across.to ? [corner('to', 'from')] : []),
    corner('to', 'to'),
    ...(first.up < up.to ? [corner('from', 'to')] : []),
  ]
}
