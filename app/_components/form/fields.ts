/**
 * Field readers for zod: each takes the typed text and gives back a domain
 * value, or one sentence naming the field, the value and the bound. An empty
 * box is null (or refused), never zero.
 */
import * as z from 'zod/mini'
import { readDay } from '@/lib/domain/calendar'
import { readDecimal, readFixed } from '@/lib/domain/decimal'
import { exactDecimal, LARGEST_AMOUNT, type Money, money } from '@/lib/domain/money'

/** What comes out of a reader, taken a step further. */
export const after = <Schema extends z.ZodMiniType, Out>(
  schema: Schema,
  further: (value: z.output<Schema>, context: z.core.ParsePayload) => Out,
) => z.pipe(schema, z.transform(further))

/** Adds a sentence at a box; what comes out then is not used. */
export const refuseAt = (context: z.core.ParsePayload, message: string, path: readonly PropertyKey[]): void => {
  context.issues.push({ code: 'custom', message, path: [...path], input: context.value })
}

export type Refuse = (sentence: string) => never

/** A typed box: missing counts as empty, as an unticked or absent field sends nothing. */
export function box<T>(read: (typed: string, refuse: Refuse) => T) {
  return after(
    z.optional(z.string({ error: 'This box could not be read. Load the page again.' })),
    (typed, context): T => {
      const refused = new Error('refused')
      const refuse: Refuse = (sentence) => {
        context.issues.push({ code: 'custom', message: sentence, input: typed })
        throw refused
      }
      try {
        return read((typed ?? '').trim(), refuse)
      } catch (error) {
        if (error === refused) return z.NEVER
        throw error
      }
    },
  )
}

const clipped = (typed: string) => (typed.length > 30 ? `${typed.slice(0, 30)}…` : typed)

export type TextRule = { label: string; max?: number; required?: boolean }

export const text = ({ label, max = 200, required = false }: TextRule) =>
  box((typed, refuse) => {
    if (required && typed === '') refuse(`${label} is empty. Please fill it in.`)
    if (typed.length > max) refuse(`${label} has ${typed.length} characters; at most ${max} fit.`)
    return typed
  })

export const email = ({ label, required = false }: TextRule) =>
  box((typed, refuse) => {
    if (required && typed === '') refuse(`${label} is empty. Please fill it in.`)
    if (typed !== '' && !/^[^\s@<>]+@[^\s@<>]+\.[^\s@<>]+$/.test(typed))
      refuse(`${label}: “${clipped(typed)}” is not an e-mail address. It needs the form name@place.tld.`)
    return typed
  })

export type MeasureRule = {
  label: string
  /** As shown beside the box. */
  unit: string
  min: number
  max: number
  /** Unit of the box in SI: 0.001 for mA. */
  scale?: number
  /** The lower bound itself is refused. */
  above?: boolean
  whole?: boolean
  /** What to do about a figure below nothing, where there can be none: "Swap the probes." */
  belowZero?: string
}

function readMeasure(typed: string, rule: MeasureRule, refuse: Refuse): number {
  const { label, unit, min, max, above = false, whole = false, belowZero } = rule
  const suffix = unit === '' ? '' : ` ${unit}`
  const bounds = above ? `more than ${min} and at most ${max}${suffix}` : `between ${min} and ${max}${suffix}`
  const read = readDecimal(typed)
  if (!read.ok)
    return read.fault === 'empty'
      ? refuse(`${label} is empty. Type a number ${bounds}.`)
      : refuse(`${label}: “${clipped(typed)}” is not a number. Type a number ${bounds}.`)
  const value = read.value
  if (belowZero && value < 0 && min >= 0) return refuse(`${label}: ${value}${suffix} is below 0. ${belowZero}`)
  if (value < min || (above && value === min))
    return refuse(`${label}: ${value}${suffix} is too low. It must be ${bounds}.`)
  if (value > max) return refuse(`${label}: ${value}${suffix} is too high. It must be ${bounds}.`)
  if (whole && !Number.isInteger(value)) return refuse(`${label}: ${value}${suffix} must be a whole number.`)
  return inSi(value, rule.scale ?? 1)
}

/** Divided for the small units, as 0.001 has no exact binary form: 51 mA is then 0.051 A, the nearest there is. */
const inSi = (value: number, scale: number) => (scale < 1 ? value / Math.round(1 / scale) : value * scale)

/** Empty is null. */
export const measure = (rule: MeasureRule) =>
  box((typed, refuse): number | null => (typed === '' ? null : readMeasure(typed, rule, refuse)))

export const requiredMeasure = (rule: MeasureRule) => box((typed, refuse) => readMeasure(typed, rule, refuse))

export type AmountRule = { label: string; currency: string; digits: number; min?: number; max?: number }

const decimalsText = (typed: string, currency: string, digits: number) =>
  digits === 0
    ? `“${typed}” has decimals, and ${currency} has none.`
    : `“${typed}” has more than ${digits} decimals, and ${currency} has ${digits}.`

function readAmount(typed: string, rule: AmountRule, refuse: Refuse): Money {
  const { label, currency, digits, min = 0, max = LARGEST_AMOUNT } = rule
  const show = (amount: number) => `${exactDecimal(money(amount), digits)} ${currency}`
  const read = readFixed(typed, digits)
  if (!read.ok) {
    if (read.fault === 'empty') return refuse(`${label} is empty. Type an amount in ${currency}.`)
    if (read.fault === 'too-many-decimals') return refuse(`${label}: ${decimalsText(clipped(typed), currency, digits)}`)
    return refuse(`${label}: “${clipped(typed)}” is not an amount. Type it like ${show(12_50)}.`)
  }
  if (read.value < min) return refuse(`${label}: ${show(read.value)} is too low. The least is ${show(min)}.`)
  if (read.value > max) return refuse(`${label}: ${show(read.value)} is too high. The most is ${show(max)}.`)
  return money(read.value)
}

export const amount = (rule: AmountRule) =>
  box((typed, refuse): Money | null => (typed === '' ? null : readAmount(typed, rule, refuse)))

export const requiredAmount = (rule: AmountRule) => box((typed, refuse) => readAmount(typed, rule, refuse))

/** Thousandths of a quantity: "1,25" is 1250. */
export const thousandths = ({ label, min, max }: { label: string; min: number; max: number }) =>
  box((typed, refuse): number => {
    const read = readFixed(typed, 3)
    if (!read.ok)
      return refuse(
        read.fault === 'empty'
          ? `${label} is empty. Type a number between ${min / 1000} and ${max / 1000}.`
          : `${label}: “${clipped(typed)}” is not a number with at most three decimals.`,
      )
    if (read.value < min || read.value > max)
      return refuse(`${label}: ${read.value / 1000} is outside ${min / 1000} to ${max / 1000}.`)
    return read.value
  })

export const choice = <const Option extends string>(label: string, options: readonly Option[]) =>
  box((typed, refuse): Option => {
    if (typed === '') return refuse(`${label}: nothing is chosen. Choose one.`)
    if (!(options as readonly string[]).includes(typed))
      return refuse(`${label}: “${clipped(typed)}” is not one of ${options.join(', ')}.`)
    return typed as Option
  })

/** Empty is allowed and stays empty. */
export const optionalChoice = <const Option extends string>(label: string, options: readonly Option[]) =>
  box((typed, refuse): Option | '' => {
    if (typed !== '' && !(options as readonly string[]).includes(typed))
      return refuse(`${label}: “${clipped(typed)}” is not one of ${options.join(', ')}.`)
    return typed as Option | ''
  })

export const day = ({ label, required = false }: { label: string; required?: boolean }) =>
  box((typed, refuse) => {
    if (typed === '') return required ? refuse(`${label} is empty. Choose a day.`) : null
    return readDay(typed) ?? refuse(`${label}: “${clipped(typed)}” is not a day. Write it as year-month-day.`)
  })

export const flag = () => box((typed) => typed === 'on' || typed === 'true')

/** Save counter of the sheet the form started from. */
export const version = () => box((typed) => (/^\d+$/.test(typed) ? Number(typed) : 0))

/** Rows by index; a row that was taken out leaves a hole and is dropped. */
export const rows = <Row extends z.ZodMiniType>(row: Row) =>
  after(z.optional(z.array(z.optional(row))), (all) =>
    (all ?? []).filter((each): each is NonNullable<typeof each> => each !== undefined),
  )
