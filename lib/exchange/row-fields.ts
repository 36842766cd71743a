/** Reading one field of a row: what stands there as a value, or a sentence at its column. */
import { type Day, readDay } from '../domain/calendar'
import { readDecimal, readFixed } from '../domain/decimal'
import { LARGEST_AMOUNT, type Money, money } from '../domain/money'
import { foldedHeading, TUBE_COLUMNS, type TubeColumn } from './tube-columns'

/** Fields of one row by their meaning; faults gather as they are read. */
export type Reader = {
  readonly text: (column: TubeColumn, max: number) => string
  readonly raw: (column: TubeColumn) => string
  readonly fault: (column: TubeColumn, sentence: string) => void
}

export type Currency = { readonly currency: string; readonly digits: number }

export const clipped = (typed: string) => (typed.length > 30 ? `${typed.slice(0, 30)}…` : typed)

export function amountOf(
  { raw, fault }: Reader,
  column: 'cost' | 'price',
  { digits, currency }: Currency,
): Money | null {
  // A currency sign or code beside the figure is no part of it.
  const typed = raw(column).replace(/^[^\d.,+-]+|[^\d.,]+$/g, '')
  if (typed === '') {
    if (raw(column) !== '')
      fault(column, `${TUBE_COLUMNS[column].heading}: “${clipped(raw(column))}” is not an amount.`)
    return null
  }
  const read = readFixed(typed, digits)
  const { heading } = TUBE_COLUMNS[column]
  if (!read.ok) {
    const why = read.fault === 'too-many-decimals' ? `has more than ${digits} decimals` : 'is not an amount'
    fault(column, `${heading}: “${clipped(raw(column))}” ${why}; ${currency} has ${digits}.`)
    return null
  }
  if (read.value < 0 || read.value > LARGEST_AMOUNT) {
    fault(
      column,
      `${heading}: “${clipped(raw(column))}” must be between 0 and ${LARGEST_AMOUNT / 10 ** digits} ${currency}.`,
    )
    return null
  }
  return money(read.value)
}

export function numberOf(
  { raw, fault }: Reader,
  column: TubeColumn,
  unit: string,
  min: number,
  max: number,
): number | null {
  const typed = raw(column)
  if (typed === '') return null
  const { heading } = TUBE_COLUMNS[column]
  const read = readDecimal(typed.replace(/\s*(V|mA\/V|mA|mS|µmho|umho|h)$/i, ''))
  if (!read.ok) {
    fault(column, `${heading}: “${clipped(typed)}” is not a number.`)
    return null
  }
  if (read.value >= min && read.value <= max) return read.value
  const side = read.value < min ? 'too low' : 'too high'
  fault(column, `${heading}: ${read.value} ${unit} is ${side}. It must be between ${min} and ${max} ${unit}.`)
  return null
}

export function dayOf({ raw, fault }: Reader, column: TubeColumn): Day | null {
  const typed = raw(column)
  if (typed === '') return null
  const day = readDay(typed.replaceAll('/', '-'))
  if (day === null)
    fault(column, `${TUBE_COLUMNS[column].heading}: “${clipped(typed)}” is not a day. Write it as year-month-day.`)
  return day
}

export function wordOf<T extends string>(
  { raw, fault }: Reader,
  column: TubeColumn,
  words: ReadonlyMap<string, T>,
): T | null {
  const typed = raw(column)
  if (typed === '') return null
  const found = words.get(foldedHeading(typed))
  if (found === undefined)
    fault(
      column,
      `${TUBE_COLUMNS[column].heading}: “${clipped(typed)}” is not one of ${[...new Set(words.values())].join(', ')}.`,
    )
  return found ?? null
}
