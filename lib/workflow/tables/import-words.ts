/** Sentences about a file before it is looked at. */
import { MOST_FILE_BYTES, MOST_TABLE_ROWS } from '@/lib/exchange/limits'
import { type TableFault, tableFaultText } from '@/lib/exchange/read-table'

export const importLimits = `CSV with a row of headings: UTF-8, comma, semicolon or tab, decimal comma or point. At most ${MOST_FILE_BYTES / 1e6} MB and ${MOST_TABLE_ROWS} rows.`

export { MOST_FILE_BYTES }

/** By the code in an address, which anybody can write: the sentences are this program's own. */
export function tableRefusal(code: string, row: number): string {
  const faults: readonly TableFault[] = [
    { code: 'table-empty' },
    { code: 'table-not-utf-8' },
    { code: 'table-quote-open', row },
  ]
  const fault = faults.find((each) => each.code === code)
  if (fault) return tableFaultText(fault)
  if (code === 'table-too-big' || code === 'table-too-long') return `This file is too long. ${importLimits}`
  return code === 'table-one-column' ? `Only one column was found. ${importLimits}` : ''
}
