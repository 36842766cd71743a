/**
 * The curve sheet of a type by itself, as a handbook prints it: the grid family over plate
 * volts and the hyperbola of its plate rating, with no reading on it.
 *
 * A pentode is drawn at the median of the screen volts printed for it (of the type whose
 * curves it borrows, where it has none). The frame reaches to the plate volts it is rated
 * for, and up to the current of the zero-volt curve, so far as that is near the rating.
 */
import { catalogueModel } from '@/lib/domain/model/catalogue-model'
import { tubeCurrents } from '@/lib/domain/model/plate-curves'
import type { Section, TypeModel } from '@/lib/domain/model/type-model'
import { fail, ok, type Result } from '@/lib/domain/result'
import { handbookRows } from '@/lib/domain/tube/handbook-rows'
import type { OperatingRow, RowKey } from '@/lib/domain/tube/handbook-type'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import { axisFromZero } from './axis'
import type { Frame } from './frame'
import type { MilliampsAt } from './grid-family'
import { figures, modelFacts, type PlateRating, type PlateSheet, type PlotFault, view } from './plate-sheet'

export type TypeSheetInput = {
  readonly typeId: string
  readonly designation: string
  readonly section: Section
  readonly rating: PlateRating | null
  /** Null: not known. */
  readonly ratedVolts: number | null
  readonly catalogue: TubeCatalogue
}

const TICKS_ACROSS = 8
const TICKS_UP = 10
const CURVES = 12
const LEAST_ACROSS = 50
const LEAST_UP = 1
/** Where the zero-volt curve is to be seen, as shares of the width. */
const ZERO_CURVE_AT = { pentode: 0.6, triode: 0.42 } as const
/** Of the current that the rating allows at the right edge. */
const HOTTEST_SHOWN = 7
const LEAST_HEAT_SHOWN = 1.7

const valuesOf = (rows: readonly OperatingRow[], key: RowKey): number[] =>
  rows.flatMap(({ figures: all }) => all[key]?.[0] ?? [])

function screenVolts({ typeId, curvesOf, parameters }: TypeModel, catalogue: TubeCatalogue): number | null {
  if (parameters.kind === 'triode') return null
  const [first] = [typeId, curvesOf]
    .map((id) => valuesOf(handbookRows(id, catalogue), 'screenVolts').sort((a, b) => a - b))
    .filter(({ length }) => length > 0)
  return first?.[Math.floor(first.length / 2)] ?? null
}

export function typeSheet(input: TypeSheetInput): Result<PlateSheet, PlotFault> {
  const { typeId, designation, section, rating, catalogue } = input
  const model = catalogueModel(typeId, catalogue, section)
  if (!model.ok) return fail({ code: 'no-curves', designation })
  const screen = screenVolts(model.value, catalogue)
  const { parameters } = model.value
  const milliampsAt: MilliampsAt = (plate, grid) => 1000 * tubeCurrents(parameters, plate, screen ?? 0, grid).plate
  const whole = view(frameOf(input, parameters.kind, milliampsAt), milliampsAt, rating, { most: CURVES, always: [0] })
  return ok({
    designation,
    ...modelFacts(model.value),
    screen: screen === null ? null : { volts: screen, assumed: false, lowest: screen, highest: screen },
    rating,
    points: [],
    whole,
    glass: null,
    loadPath: null,
    figures: figures(whole, milliampsAt),
  })
}

function frameOf(
  { typeId, rating, ratedVolts, catalogue }: TypeSheetInput,
  kind: 'pentode' | 'triode',
  milliampsAt: MilliampsAt,
): Frame {
  const rows = handbookRows(typeId, catalogue).filter(({ connection }) => connection === kind)
  const printed = 1.2 * Math.max(0, ...valuesOf(rows, 'plateVolts'))
  const right = Math.max(1.05 * (ratedVolts ?? 0), printed, ratedVolts || printed ? LEAST_ACROSS : 300)
  const zeroVolts = milliampsAt(ZERO_CURVE_AT[kind] * right, 0)
  const hottest = rating ? (1000 * rating.watts) / right : Number.POSITIVE_INFINITY
  const leastUp = rating ? Math.max(LEAST_UP, LEAST_HEAT_SHOWN * hottest) : LEAST_UP
  return {
    across: axisFromZero(right, TICKS_ACROSS),
    up: axisFromZero(Math.max(1.1 * Math.min(zeroVolts, HOTTEST_SHOWN * hottest), leastUp), TICKS_UP),
  }
}
