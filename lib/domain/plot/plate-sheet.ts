/**
 * A page of plate curves with what was read on it, as pure geometry.
 *
 * The curves are those of an average tube of the type (type-model.ts) at the screen
 * volts of the readings; the points are readings and owe nothing to the curves. Where
 * no screen volts were read the screen is taken to stand at the plate's volts, which
 * is an assumption and said so.
 */

import { catalogueModel } from '@/lib/domain/model/catalogue-model'
import { tubeCurrents } from '@/lib/domain/model/plate-curves'
import type { TypeModel } from '@/lib/domain/model/type-model'
import { fail, ok, type Result } from '@/lib/domain/result'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import type { RatingSystem } from '@/lib/domain/tube/tube-variant'
import { axisAround, axisFromZero } from './axis'
import type { Frame } from './frame'
import { type FamilySize, type GridCurve, gridFamily, type MilliampsAt } from './grid-family'
import { type HeatLimit, heatLimit } from './heat-limit'
import { type LoadPath, loadPath, type PlotLoad } from './load-path'
import { boxesShow, isLater, type OperatingPoint, operatingPoint, type PlotReading } from './operating-point'

export type PlateRating = { readonly watts: number; readonly system: RatingSystem | null }

export type PlateSheetInput = {
  readonly typeId: string
  readonly designation: string
  /** Of the variant. Null: none is given for it. */
  readonly rating: PlateRating | null
  readonly readings: readonly PlotReading[]
  /** Null: not known; the load line is then left out. */
  readonly load: PlotLoad | null
  readonly catalogue: TubeCatalogue
}

export type PlotFault = { readonly code: 'no-curves' | 'nothing-read'; readonly designation: string }

/** One frame of the sheet with all that falls into it. */
export type PlotView = {
  readonly frame: Frame
  readonly curves: readonly GridCurve[]
  readonly heat: HeatLimit | null
}

export type PlateSheet = {
  readonly designation: string
  readonly model: Pick<TypeModel, 'curvesOf' | 'standIn' | 'movedTo' | 'cutoffKnown'>
  /** ± of the curves' current, 95 %, as a share: exp(2u) − 1. */
  readonly curvesGoodTo: number
  /** To cathode. Null for a triode. */
  readonly screen: ScreenVolts | null
  readonly rating: PlateRating | null
  readonly points: readonly OperatingPoint[]
  readonly whole: PlotView
  /** The points and their boxes large. Null: they show well enough on the whole sheet. */
  readonly glass: PlotView | null
  readonly loadPath: LoadPath | null
  /** The curves in figures. */
  readonly figures: CurveFigures
}

export type ScreenVolts = {
  /** For which the curves are drawn: the median of what was read. */
  readonly volts: number
  /** Not read: the plate's volts stand in. */
  readonly assumed: boolean
  readonly lowest: number
  readonly highest: number
}

export type CurveFigures = {
  /** To cathode: the ticks of the whole sheet, without zero. */
  readonly plateVolts: readonly number[]
  readonly rows: readonly { readonly gridVolts: number; readonly milliamps: readonly number[] }[]
}

const TICKS_ACROSS = 8
const TICKS_UP = 10
const GLASS_TICKS = 4
const CURVES = 14
const GLASS_CURVES = 5

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length

/** The upper one of two in the middle: a screen that has lost its supply does not set the curves. */
const median = (sorted: readonly number[]): number => sorted[Math.floor(sorted.length / 2)] ?? Number.NaN

/** Of the later round where there are two. */
function screenOf({ parameters }: TypeModel, readings: readonly PlotReading[]): PlateSheet['screen'] {
  if (parameters.kind === 'triode') return null
  const after = readings.filter(({ when }) => isLater(when))
  const latest = after.length > 0 ? after : readings
  const read = latest.flatMap(({ screenToCathode }) => screenToCathode ?? []).filter((one) => one > 0)
  const known = read.length > 0 ? read : latest.map(({ idle }) => idle.plateToCathodeVolts.value)
  const sorted = [...known].sort((a, b) => a - b)
  const volts = median(sorted)
  return { volts, assumed: read.length === 0, lowest: sorted[0] ?? volts, highest: sorted.at(-1) ?? volts }
}

function wholeFrame(points: readonly OperatingPoint[], rating: PlateRating | null, path: LoadPath | null): Frame {
  const right = Math.max(...points.map(({ box }) => box.right))
  const top = Math.max(...points.map(({ box }) => box.top))
  const hottest = rating ? (1000 * rating.watts) / Math.max(right, 1) : 0
  const [clipping, cutoff] = [path?.points[0], path?.points.at(-1)]
  const upTo = clipping ? Math.max(1.15 * clipping.up, 1.1 * top) : 2.5 * Math.max(top, hottest)
  return {
    across: axisFromZero(Math.max(1.22 * right, 1.04 * (cutoff?.across ?? 0), 50), TICKS_ACROSS),
    up: axisFromZero(Math.max(upTo, 5), TICKS_UP),
  }
}

/** A box that is no wider than a hair still gets a frame with some room. */
function glassFrame(points: readonly OperatingPoint[]): Frame {
  const around = (lows: readonly number[], highs: readonly number[]) => {
    const [low, high] = [Math.min(...lows), Math.max(...highs)]
    const room = Math.max(0.45 * (high - low), 0.004 * high, 0.1)
    return axisAround(Math.max(0, low - room), high + room, GLASS_TICKS)
  }
  return {
    across: around(
      points.map(({ box }) => box.left),
      points.map(({ box }) => box.right),
    ),
    up: around(
      points.map(({ box }) => box.bottom),
      points.map(({ box }) => box.top),
    ),
  }
}

export function modelFacts(model: TypeModel): Pick<PlateSheet, 'model' | 'curvesGoodTo'> {
  const { curvesOf, standIn, movedTo, cutoffKnown, share } = model
  return { model: { curvesOf, standIn, movedTo, cutoffKnown }, curvesGoodTo: Math.exp(2 * share) - 1 }
}

export function view(frame: Frame, milliampsAt: MilliampsAt, rating: PlateRating | null, size: FamilySize): PlotView {
  return {
    frame,
    curves: gridFamily(frame, milliampsAt, size),
    heat: rating && heatLimit(frame, rating.watts),
  }
}

export function figures({ frame, curves }: PlotView, milliampsAt: MilliampsAt): CurveFigures {
  const plateVolts = frame.across.ticks.filter((volts) => volts > 0)
  const rows = curves.map(({ gridVolts }) => ({
    gridVolts,
    milliamps: plateVolts.map((volts) => milliampsAt(volts, gridVolts)),
  }))
  return { plateVolts, rows }
}

function meanPoint(points: readonly OperatingPoint[]) {
  const last = points.some(({ when }) => isLater(when)) ? points.filter(({ when }) => isLater(when)) : points
  return { across: mean(last.map(({ at }) => at.across)), up: mean(last.map(({ at }) => at.up)) }
}

export function plateSheet({
  typeId,
  designation,
  rating,
  readings,
  load,
  catalogue,
}: PlateSheetInput): Result<PlateSheet, PlotFault> {
  const found = catalogueModel(typeId, catalogue)
  if (!found.ok) return fail({ code: 'no-curves', designation })
  if (readings.length === 0) return fail({ code: 'nothing-read', designation })
  const model = found.value
  const screen = screenOf(model, readings)
  const currentAt = (plate: number, screenVolts: number, grid: number): number =>
    1000 * tubeCurrents(model.parameters, plate, screenVolts, grid).plate
  const milliampsAt: MilliampsAt = (plate, grid) => currentAt(plate, screen?.volts ?? 0, grid)
  const points = readings.map((reading) => {
    const own = reading.screenToCathode ?? screen?.volts ?? 0
    return operatingPoint(reading, (plate, grid) => currentAt(plate, own, grid))
  })
  const path = load && loadPath(meanPoint(points), load, (plate) => milliampsAt(plate, 0))
  const frame = wholeFrame(points, rating, path)
  const whole = view(frame, milliampsAt, rating, { most: CURVES, always: path ? [0] : [] })
  const glass = () => view(glassFrame(points), milliampsAt, rating, { most: GLASS_CURVES, always: [] })
  return ok({
    designation,
    ...modelFacts(model),
    screen,
    rating,
    points,
    whole,
    glass: boxesShow(frame, points) ? null : glass(),
    loadPath: path,
    figures: figures(whole, milliampsAt),
  })
}
