/** The sheet of a type the shop writes down: its boxes, read into an entry, and an entry written into its boxes. */
import * as z from 'zod/mini'
import { flatRows, type RowValues, rowsOf } from '@/app/_components/form/edit-rows'
import {
  after,
  choice,
  type MeasureRule,
  measure,
  optionalChoice,
  refuseAt,
  requiredMeasure,
  text,
  version,
} from '@/app/_components/form/fields'
import type { FormValues } from '@/app/_components/form/form-state'
import { limitName, rowName } from '@/lib/domain/tube/figure-names'
import { MOST_OWN_ROWS, type OwnRow, type OwnTypeEntry, TUBE_CLASSES } from '@/lib/domain/tube/own/own-type-entry'
import { OWN_LIMITS, type OwnLimitKey } from '@/lib/domain/tube/own/own-type-shown'
import { RATING_SYSTEMS } from '@/lib/domain/tube/rating-system'
import { type WordSet, wordsFor } from '@/lib/domain/words'

export const BASES = ['octal', 'noval', 'miniature-7', 'novar', 'four-pin'] as const
export const DEGREES = ['same', 'similar'] as const
/** The largest base has so many pins; the box of each is named "pin3". */
export const PIN_BOXES = [1, 2, 3, 4, 5, 6, 7, 8, 9] as const
type PinName = `pin${(typeof PIN_BOXES)[number]}`

type RowField = keyof OwnRow
/** Bounds of a printed operating point, generous: a slip of the decimal point falls outside. */
export const ROW_BOUNDS: Readonly<Record<RowField, Omit<MeasureRule, 'label'>>> = {
  plateVolts: { unit: 'V', min: 0, max: 2000, above: true },
  screenVolts: { unit: 'V', min: 0, max: 1000, above: true },
  gridVolts: { unit: 'V', min: -400, max: 0 },
  plateMilliamps: { unit: 'mA', min: 0, max: 2000, above: true },
  screenMilliamps: { unit: 'mA', min: 0, max: 200, above: true },
  gmMilliampsPerVolt: { unit: 'mA/V', min: 0, max: 100, above: true },
  plateResistanceKilohms: { unit: 'kΩ', min: 0, max: 5000, above: true },
  mu: { unit: '', min: 0, max: 1000, above: true },
}
const REQUIRED: ReadonlySet<RowField> = new Set(['plateVolts', 'gridVolts', 'plateMilliamps'])
export const ROW_FIELDS = Object.keys(ROW_BOUNDS) as readonly RowField[]
export const BLANK_ROW: RowValues = Object.fromEntries(ROW_FIELDS.map((field) => [field, '']))

export const isBlankRow = (row: Readonly<Record<string, string | undefined>>): boolean =>
  ROW_FIELDS.every((field) => (row[field] ?? '').trim() === '')

const looseRow = z.record(z.string(), z.optional(z.string()))

function rowSchema(place: number, set: WordSet) {
  const label = (field: RowField) => `Operating point ${place}, ${rowName(field, wordsFor(set)).label}`
  const fields = ROW_FIELDS.map((field) => {
    const rule = { ...ROW_BOUNDS[field], label: label(field) }
    return [field, REQUIRED.has(field) ? requiredMeasure(rule) : measure(rule)]
  })
  return z.object(Object.fromEntries(fields) as Record<RowField, ReturnType<typeof measure>>)
}

/** A row left wholly empty is none. */
const operatingRows = (set: WordSet) =>
  after(z.optional(z.array(z.optional(looseRow))), (typed, context): OwnRow[] => {
    const filled = (typed ?? []).flatMap((row, index) => (row && !isBlankRow(row) ? [{ row, index }] : []))
    if (filled.length > MOST_OWN_ROWS) refuseAt(context, `At most ${MOST_OWN_ROWS} operating points are kept.`, [])
    return filled.flatMap(({ row, index }): OwnRow[] => {
      const parsed = rowSchema(index + 1, set).safeParse(row)
      if (parsed.success) return [parsed.data as OwnRow]
      for (const { message, path } of parsed.error.issues) refuseAt(context, message, [index, ...path])
      return []
    })
  })

const limitFields = (set: WordSet) => {
  const fields = OWN_LIMITS.map(({ key, unit, most }) => {
    const { label } = limitName(key, wordsFor(set))
    return [key, measure({ label: `${label}, limit`, unit, min: 0, max: most, above: true })] as const
  })
  return Object.fromEntries(fields) as Record<OwnLimitKey, ReturnType<typeof measure>>
}

const pinFields = () =>
  Object.fromEntries(PIN_BOXES.map((pin) => [`pin${pin}`, text({ label: `Pin ${pin}`, max: 60 })])) as Record<
    PinName,
    ReturnType<typeof text>
  >

const boxes = (set: WordSet) =>
  z.object({
    id: text({ label: 'Type' }),
    version: version(),
    designation: text({ label: 'Designation', required: true, max: 40 }),
    otherNumbers: text({ label: 'Other numbers', max: 200 }),
    family: text({ label: 'Family', max: 40 }),
    tubeClass: choice('Class', TUBE_CLASSES),
    // “base” is what a sheet carries of its start.
    tubeBase: choice('Base', BASES),
    basing: text({ label: 'Basing', max: 20 }),
    ...pinFields(),
    heaterVolts: requiredMeasure({ label: 'Heater voltage', unit: 'V', min: 0, max: 150, above: true }),
    heaterAmps: requiredMeasure({ label: 'Heater current', unit: 'A', min: 0, max: 20, above: true }),
    system: choice('Rating system', RATING_SYSTEMS),
    ...limitFields(set),
    rows: operatingRows(set),
    dropVolts: measure({ label: 'Drop', unit: 'V', min: 0, max: 200, above: true }),
    dropMilliamps: measure({ label: 'Drop, current per plate', unit: 'mA', min: 0, max: 2000, above: true }),
    curvesLike: text({ label: 'Curves like', max: 40 }),
    curvesDegree: optionalChoice('How like', DEGREES),
    sourceText: text({ label: 'Read from', required: true, max: 300 }),
    note: text({ label: 'Note', max: 1000 }),
  })

type Boxes = z.output<ReturnType<typeof boxes>>

export type OwnTypeTyped = { readonly id: string; readonly version: number; readonly entry: OwnTypeEntry }

export const ownTypeSchema = (set: WordSet) =>
  after(boxes(set), (typed, context): OwnTypeTyped => {
    const { id, version: saved, dropVolts, dropMilliamps, curvesLike, curvesDegree } = typed
    if ((dropVolts === null) !== (dropMilliamps === null))
      refuseAt(context, 'Drop: give the volts and the current they were read at, or neither.', [
        dropVolts === null ? 'dropVolts' : 'dropMilliamps',
      ])
    if (curvesLike !== '' && curvesDegree === '')
      refuseAt(context, 'How like: choose whether it is the same system or merely similar.', ['curvesDegree'])
    return { id, version: saved, entry: entryOf(typed) }
  })

const tidy = (designation: string): string => designation.trim().replace(/\s+/g, ' ').toUpperCase()

function entryOf(typed: Boxes): OwnTypeEntry {
  const { tubeClass, tubeBase: base, basing, family, heaterVolts, heaterAmps, system, rows, sourceText, note } = typed
  const { dropVolts, dropMilliamps, curvesLike, curvesDegree } = typed
  const limits = OWN_LIMITS.flatMap(({ key }) => (typed[key] === null ? [] : [[key, typed[key]]]))
  const pins = PIN_BOXES.flatMap((pin) => (typed[`pin${pin}`] ? [[String(pin), typed[`pin${pin}`]]] : []))
  return {
    ...{ tubeClass, base, basing, family, heaterVolts, heaterAmps, system, rows, sourceText, note },
    designation: tidy(typed.designation),
    otherNumbers: typed.otherNumbers
      .split(/[,;\n]+/)
      .map(tidy)
      .filter(Boolean),
    pins: pins.length > 0 ? Object.fromEntries(pins) : null,
    limits: Object.fromEntries(limits),
    drop: dropVolts === null || dropMilliamps === null ? null : { dropVolts, milliamps: dropMilliamps },
    curves: curvesLike === '' || curvesDegree === '' ? null : { typeId: curvesLike, degree: curvesDegree },
  }
}

const shownNumber = (value: number | null | undefined): string =>
  value === null || value === undefined ? '' : String(value)

const rowText = (row: OwnRow): RowValues =>
  Object.fromEntries(ROW_FIELDS.map((field) => [field, shownNumber(row[field])]))

/** What is written of a type, or the start of a sheet, in the boxes. A rectifier has no rows to be shown empty. */
export function entryValues(entry: Partial<OwnTypeEntry>): FormValues {
  const { pins, limits, drop, curves, rows = [], otherNumbers = [] } = entry
  const boxed = (['designation', 'family', 'tubeClass', 'basing', 'system', 'sourceText', 'note'] as const).map(
    (name) => [name, entry[name] ?? ''],
  )
  return {
    ...Object.fromEntries(boxed),
    tubeBase: entry.base ?? '',
    otherNumbers: otherNumbers.join(', '),
    ...Object.fromEntries(PIN_BOXES.map((pin) => [`pin${pin}`, pins?.[pin] ?? ''])),
    heaterVolts: shownNumber(entry.heaterVolts),
    heaterAmps: shownNumber(entry.heaterAmps),
    ...Object.fromEntries(OWN_LIMITS.map(({ key }) => [key, shownNumber(limits?.[key])])),
    dropVolts: shownNumber(drop?.dropVolts),
    dropMilliamps: shownNumber(drop?.milliamps),
    curvesLike: curves?.typeId ?? '',
    curvesDegree: curves?.degree ?? '',
    ...flatRows('rows', rows.length > 0 ? rows.map(rowText) : [BLANK_ROW]),
  }
}

/** Rows left empty go, so that a row told as at fault is the one that then stands there. One stays to be filled. */
export function withoutBlankRows(values: FormValues): FormValues {
  const filled = rowsOf(values, 'rows').filter((row) => !isBlankRow(row))
  const rest = Object.entries(values).filter(([name]) => !name.startsWith('rows.'))
  return { ...Object.fromEntries(rest), ...flatRows('rows', filled.length > 0 ? filled : [BLANK_ROW]) }
}
