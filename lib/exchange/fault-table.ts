/** The rows that were refused, with a column that says why: to be put right and taken in again. */

import type { TableRow } from './read-table'
import type { RowFault } from './read-tube-row'
import { csvRecord } from './write-table'

export const FAULT_HEADING = 'Fault'

export type RefusedRow = { readonly row: TableRow; readonly faults: readonly RowFault[] }

/** A column of an earlier such file is written anew and not carried on. */
export function faultTable(headings: readonly string[], refused: readonly RefusedRow[]): string {
  const own = headings.map((heading) => heading !== FAULT_HEADING)
  const kept = (fields: readonly string[]) =>
    headings.map((_, place) => fields[place] ?? '').filter((_, place) => own[place])
  const head = csvRecord([...kept(headings), FAULT_HEADING])
  const rows = refused.map(({ row, faults }) =>
    csvRecord([...kept(row.fields), faults.map(({ sentence }) => sentence).join(' ')]),
  )
  return `\ufeff${head}${rows.join('')}`
}
