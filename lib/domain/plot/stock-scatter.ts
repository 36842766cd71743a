/**
 * A stock of one type as points: plate current across, mA, against transconductance up, mA/V;
 * at the test point or as predicted in an amplifier. Pure geometry.
 */
import { axisAround } from './axis'
import type { Frame, PlotPoint } from './frame'

export type StockPoint = {
  readonly tubeId: string
  readonly mark: string
  readonly designation: string
  /** mA and mA/V. */
  readonly at: PlotPoint
  /** Of the set that is marked out. */
  readonly chosen: boolean
  /** Instrument it was read on, where its reading was carried over from there. */
  readonly carriedFrom?: string
}

export type StockScatter = {
  readonly frame: Frame
  /** Chosen ones last, so that they lie on top; the first so many of a long stock. */
  readonly points: readonly StockPoint[]
  /** More than are drawn. */
  readonly left: number
  /** Each may be reached by keyboard; of a longer stock the chosen ones. */
  readonly reachable: number
}

const TICKS = 6
const MOST_POINTS = 1500
const MOST_STOPS = 120

/** null: nothing to draw. */
export function stockScatter(all: readonly StockPoint[]): StockScatter | null {
  const [first] = all
  if (!first) return null
  const chosen = all.filter((point) => point.chosen)
  const others = all.filter((point) => !point.chosen).slice(0, MOST_POINTS)
  const points = [...others, ...chosen]
  return {
    frame: {
      across: axisOf(points.map(({ at }) => at.across)),
      up: axisOf(points.map(({ at }) => at.up)),
    },
    points,
    left: all.length - points.length,
    reachable: points.length <= MOST_STOPS ? points.length : chosen.length,
  }
}

/** Some room on both sides; a single value still gets an axis. */
function axisOf(values: readonly number[]) {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const value of values) {
    low = Math.min(low, value)
    high = Math.max(high, value)
  }
  const room = Math.max(0.05 * (high - low), 0.02 * high, 0.01)
  return axisAround(Math.max(0, low - room), high + room, TICKS)
}
