/**
 * A table as CSV text after RFC 4180: comma, CRLF after every record, a field
 * in quotes where it holds a quote, a comma or a line break, quotes in it
 * doubled. A byte order mark goes first, so that spreadsheets read it as UTF-8.
 *
 * A spreadsheet takes a text that begins with = + - @ (or a tab or return
 * before it) for a formula and runs it. Such a text gets an apostrophe in
 * front; reading takes that apostrophe off again, so it makes the round trip.
 * Numbers and days are no texts: -14 stays -14.
 */
export type Cell = string | number | null

/** Texts are made harmless; what is known to be a number, a day or a mark stays as it is. */
export type CellKind = 'text' | 'plain'

export type TableColumn<Row> = {
  readonly heading: string
  readonly kind: CellKind
  readonly cell: (row: Row) => Cell
}

const BYTE_ORDER_MARK = '\ufeff'
const FORMULA = /^[=+\-@\t\r]/
const NEUTRALISED = /^'+[=+\-@\t\r]/
const NEEDS_QUOTES = /["\r\n,]|^\s|\s$/

export const neutralised = (text: string): string => (FORMULA.test(text) || NEUTRALISED.test(text) ? `'${text}` : text)

/** What `neutralised` was given. */
export const restored = (text: string): string => (NEUTRALISED.test(text) ? text.slice(1) : text)

export const quoted = (text: string): string => (NEEDS_QUOTES.test(text) ? `"${text.replaceAll('"', '""')}"` : text)

export const csvRecord = (fields: readonly string[]): string => `${fields.map(quoted).join(',')}\r\n`

/** With the byte order mark. */
export const csvHead = <Row>(columns: readonly TableColumn<Row>[]): string =>
  `${BYTE_ORDER_MARK}${csvRecord(columns.map(({ heading }) => heading))}`

export const csvRows = <Row>(columns: readonly TableColumn<Row>[], rows: readonly Row[]): string =>
  rows.map((row) => csvRecord(columns.map((column) => fieldOf(column, row)))).join('')

export const csvText = <Row>(columns: readonly TableColumn<Row>[], rows: readonly Row[]): string =>
  csvHead(columns) + csvRows(columns, rows)

function fieldOf<Row>({ kind, cell }: TableColumn<Row>, row: Row): string {
  const value = cell(row)
  if (value === null) return ''
  return typeof value === 'number' || kind === 'plain' ? String(value) : neutralised(value)
}
