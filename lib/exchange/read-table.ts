/**
 * A file of another program as a table: UTF-8 with or without a byte order
 * mark, records after RFC 4180, a comma, semicolon or tab between fields, told
 * from the file itself. Nothing is guessed about a file that is not UTF-8: it is
 * refused by name, because a wrong guess would spoil every accent in silence.
 */
import Papa from 'papaparse'
import { fail, ok, type Result } from '../domain/result'
import { MOST_FILE_BYTES, MOST_TABLE_ROWS } from './limits'

export type Delimiter = ',' | ';' | '\t'

export type Table = {
  readonly delimiter: Delimiter
  readonly headings: readonly string[]
  /** Without the headings and without empty lines. */
  readonly rows: readonly TableRow[]
}

/** `number` counts the file's records from 1, the headings being 1: as a spreadsheet numbers them. */
export type TableRow = { readonly number: number; readonly fields: readonly string[] }

export type TableFault =
  | { readonly code: 'table-empty' }
  | { readonly code: 'table-too-big'; readonly bytes: number }
  | { readonly code: 'table-not-utf-8' }
  | { readonly code: 'table-quote-open'; readonly row: number }
  | { readonly code: 'table-too-long'; readonly rows: number }
  | { readonly code: 'table-one-column'; readonly heading: string }

export function readTable(bytes: Uint8Array): Result<Table, TableFault> {
  if (bytes.length === 0) return fail({ code: 'table-empty' })
  if (bytes.length > MOST_FILE_BYTES) return fail({ code: 'table-too-big', bytes: bytes.length })
  const text = decoded(bytes)
  return text === null ? fail({ code: 'table-not-utf-8' }) : parseTable(text)
}

/** Null: not UTF-8. A byte order mark is no part of the text. */
function decoded(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return null
  }
}

export function parseTable(text: string): Result<Table, TableFault> {
  const delimiter = delimiterOf(text)
  const { data, errors } = Papa.parse<string[]>(text, { delimiter })
  const open = errors.find(({ type }) => type === 'Quotes')
  if (open) return fail({ code: 'table-quote-open', row: (open.row ?? 0) + 1 })
  const records = data.map((fields, place) => ({ number: place + 1, fields }))
  const [head, ...rows] = records.filter(({ fields }) => fields.some((field) => field.trim() !== ''))
  if (!head) return fail({ code: 'table-empty' })
  if (rows.length > MOST_TABLE_ROWS) return fail({ code: 'table-too-long', rows: rows.length })
  if (head.fields.length === 1) return fail({ code: 'table-one-column', heading: head.fields[0] ?? '' })
  return ok({ delimiter, headings: head.fields.map((field) => field.trim()), rows })
}

/** The one that stands most often in the first record, outside of quotes; a comma when none does. */
export function delimiterOf(text: string): Delimiter {
  const counts: Record<Delimiter, number> = { ',': 0, ';': 0, '\t': 0 }
  let isQuoted = false
  for (const sign of text) {
    if (sign === '"') isQuoted = !isQuoted
    else if (!isQuoted && (sign === '\n' || sign === '\r')) {
      if (Object.values(counts).some((count) => count > 0)) break
    } else if (!isQuoted && sign in counts) counts[sign as Delimiter]++
  }
  return (Object.keys(counts) as Delimiter[]).reduce((best, each) => (counts[each] > counts[best] ? each : best), ',')
}

export function tableFaultText(fault: TableFault): string {
  switch (fault.code) {
    case 'table-empty':
      return 'There is nothing in this file. Choose one with a row of headings and rows below it.'
    case 'table-too-big':
      return `This file has ${(fault.bytes / 1e6).toFixed(1)} MB; at most ${MOST_FILE_BYTES / 1e6} MB are read. Divide it.`
    case 'table-not-utf-8':
      return 'This file is not written in UTF-8, so its accents would be spoilt. Save it as “CSV UTF-8” and choose it again.'
    case 'table-quote-open':
      return `Row ${fault.row}: a quotation mark is opened or closed where it may not be. Everything after it would be one field.`
    case 'table-too-long':
      return `This file has ${fault.rows} rows; at most ${MOST_TABLE_ROWS} are taken at once. Divide it.`
    case 'table-one-column':
      return `Only one column was found: “${fault.heading.slice(0, 60)}”. Between fields there must be a comma, a semicolon or a tab.`
  }
}
