/** The draft's form: its boxes, read into a quote, and a quote written into its boxes. */
import * as z from 'zod/mini'
import { flatRows, type RowValues } from '@/app/_components/form/edit-rows'
import {
  after,
  day,
  flag,
  measure,
  refuseAt,
  requiredAmount,
  text,
  thousandths,
  version,
} from '@/app/_components/form/fields'
import { type FormValues, sheetValues } from '@/app/_components/form/form-state'
import { exactDecimal, LARGEST_AMOUNT, type Money } from '@/lib/domain/money'
import type { Quote, QuoteLine } from '@/lib/domain/quote/quote'

export type MoneyRules = { readonly currency: string; readonly digits: number }

export const LINE_LISTS = ['labour', 'parts', 'fees'] as const
export type LineList = (typeof LINE_LISTS)[number]

export const KIND_OF = { labour: 'labour', parts: 'part', fees: 'fee' } as const
const NAMES: Record<LineList, string> = { labour: 'Labour', parts: 'Part', fees: 'Fee' }
/** Only a fee may be a credit. */
const LEAST_PRICE: Record<LineList, number> = { labour: 0, parts: 0, fees: -LARGEST_AMOUNT }

const looseRow = z.record(z.string(), z.optional(z.string()))

/** Sentences name the line first, since the same box stands there once for every line. */
function rowsBy<Row extends z.ZodMiniType>(
  schemaOf: (at: string) => Row,
  nameOf: (row: RowValues, index: number) => string,
) {
  return after(z.optional(z.array(z.optional(looseRow))), (typed, context): z.output<Row>[] =>
    (typed ?? []).flatMap((row, index) => {
      if (row === undefined) return []
      const read = schemaOf(nameOf(row as RowValues, index)).safeParse(row)
      if (read.success) return [read.data]
      for (const { message, path } of read.error.issues) refuseAt(context, message, [index, ...path])
      return []
    }),
  )
}

const clipped = (name: string) => (name.length > 40 ? `${name.slice(0, 40)}…` : name)

const lineSchema =
  (list: LineList, { currency, digits }: MoneyRules) =>
  (at: string) =>
    after(lineBoxes(list, { currency, digits }, at), (line, context) => {
      if (line.partId !== null && line.thousandths % 1000 !== 0)
        refuseAt(context, `${at}: quantity must be a whole number, as the drawer counts pieces.`, ['thousandths'])
      return line
    })

const lineBoxes = (list: LineList, { currency, digits }: MoneyRules, at: string) =>
  z.object({
    id: after(text({ label: 'Line' }), (id) => id || null),
    partId: after(text({ label: 'Part' }), (id) => id || null),
    text: text({ label: `${at}: what it is for`, required: true, max: 200 }),
    thousandths: thousandths({ label: `${at}: quantity`, min: 1, max: 9_999_000 }),
    unit: text({ label: `${at}: unit`, max: 12 }),
    unitPrice: requiredAmount({ label: `${at}: unit price`, currency, digits, min: LEAST_PRICE[list] }),
    taxable: flag(),
  })

const tubeSchema =
  ({ currency, digits }: MoneyRules) =>
  (at: string) =>
    z.object({
      id: text({ label: 'Line' }),
      unitPrice: requiredAmount({ label: `${at}: price`, currency, digits }),
      taxable: flag(),
    })

export function quoteSchema(rules: MoneyRules) {
  const lines = (list: LineList) =>
    rowsBy(lineSchema(list, rules), (row, index) => clipped(row.text?.trim() || `${NAMES[list]} line ${index + 1}`))
  return z.object({
    version: version(),
    validUntil: day({ label: 'Valid until', required: true }),
    depositPercent: after(
      measure({ label: 'Deposit', unit: '%', min: 0, max: 100, whole: true }),
      (percent) => percent ?? 0,
    ),
    note: text({ label: 'Note', max: 1000 }),
    findings: text({ label: 'What the bench found', max: 4000 }),
    findingsBefore: z.optional(z.string()),
    labour: lines('labour'),
    parts: lines('parts'),
    fees: lines('fees'),
    tubes: rowsBy(tubeSchema(rules), (row, index) => clipped(row.text?.trim() || `Tube line ${index + 1}`)),
  })
}

export type QuoteTyped = z.output<ReturnType<typeof quoteSchema>>

/** One line alone, for its amount while others cannot be read yet. */
export const lineOf = (list: LineList, row: RowValues, rules: MoneyRules) => lineSchema(list, rules)('').safeParse(row)
export const tubeOf = (row: RowValues, rules: MoneyRules) => tubeSchema(rules)('').safeParse(row)

export const blankLine = (unit: string): RowValues => ({
  id: '',
  partId: '',
  text: '',
  thousandths: '1',
  unit,
  unitPrice: '',
  taxable: 'on',
})

const ticked = (is: boolean): RowValues => (is ? { taxable: 'on' } : {})

const lineText = (
  { id, text: what, thousandths: count, unit, unitPrice, taxable, partId }: QuoteLine,
  digits: number,
): RowValues => ({
  ...{ id, text: what, unit, partId: partId ?? '' },
  thousandths: String(count / 1000),
  unitPrice: exactDecimal(unitPrice, digits),
  ...ticked(taxable),
})

export const tubeName = ({ text: what, socketPosition }: Pick<QuoteLine, 'text' | 'socketPosition'>): string =>
  socketPosition ? `${socketPosition}: ${what}` : what

const tubeText = (line: QuoteLine, digits: number): RowValues => ({
  id: line.id,
  text: tubeName(line),
  unitPrice: exactDecimal(line.unitPrice as Money, digits),
  ...ticked(line.taxable),
})

export function quoteValues(quote: Quote, findings: string, digits: number): FormValues {
  const of = (kind: QuoteLine['kind']) => quote.lines.filter((line) => line.kind === kind)
  const { version: saved, validUntil, depositPercent, note } = quote
  return sheetValues({
    version: String(saved),
    validUntil,
    depositPercent: String(depositPercent),
    note,
    findings,
    findingsBefore: findings,
    ...flatRows(
      'labour',
      of('labour').map((line) => lineText(line, digits)),
    ),
    ...flatRows(
      'parts',
      of('part').map((line) => lineText(line, digits)),
    ),
    ...flatRows(
      'fees',
      of('fee').map((line) => lineText(line, digits)),
    ),
    ...flatRows(
      'tubes',
      of('tube').map((line) => tubeText(line, digits)),
    ),
  })
}
