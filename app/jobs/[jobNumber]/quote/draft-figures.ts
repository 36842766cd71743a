/** What stands in the boxes, added up: as the page is drawn and, with JavaScript, as one types. */
import { rowsOf } from '@/app/_components/form/edit-rows'
import type { FormValues } from '@/app/_components/form/form-state'
import type { Money } from '@/lib/domain/money'
import { amountOf, type LineKind, type PricedLine, type QuoteTotals, quoteTotals } from '@/lib/domain/quote/quote'
import { KIND_OF, LINE_LISTS, lineOf, type MoneyRules, tubeOf } from './quote-schema'

export type DraftFigures = {
  /** By field name of the row, "labour.0"; null where the row cannot be read yet. */
  readonly amounts: Readonly<Record<string, Money | null>>
  /** Rows that are not in the totals, because they cannot be read yet. */
  readonly unread: number
  readonly totals: QuoteTotals
}

type Priced = PricedLine & { readonly kind: LineKind }

export function draftFigures(values: FormValues, rules: MoneyRules, taxMilliPercent: number): DraftFigures {
  const lines = new Map<string, Priced | null>()
  for (const list of LINE_LISTS)
    for (const [index, row] of rowsOf(values, list).entries()) {
      const read = lineOf(list, row, rules)
      lines.set(`${list}.${index}`, read.success ? { ...read.data, kind: KIND_OF[list] } : null)
    }
  for (const [index, row] of rowsOf(values, 'tubes').entries()) {
    const read = tubeOf(row, rules)
    lines.set(`tubes.${index}`, read.success ? { ...read.data, thousandths: 1000, kind: 'tube' } : null)
  }
  const read = [...lines.values()].filter((line): line is Priced => line !== null)
  const percent = Number(values.depositPercent)
  const deposit = Number.isInteger(percent) && percent >= 0 && percent <= 100 ? percent : 0
  return {
    amounts: Object.fromEntries([...lines].map(([name, line]) => [name, line && amountOf(line)])),
    unread: lines.size - read.length,
    totals: quoteTotals(read, taxMilliPercent, deposit),
  }
}
