/** Reads every row of a chosen file through its mapping, in pieces: which are tubes, and what is wrong with the others. */
import { type Day, dayInZone } from '@/lib/domain/calendar'
import { minorDigits } from '@/lib/domain/money'
import type { Shop } from '@/lib/domain/shop/shop'
import { type StockType, stockType } from '@/lib/domain/stock/stock-type'
import { wordsFor } from '@/lib/domain/words'
import type { RefusedRow } from '@/lib/exchange/fault-table'
import type { Table, TableRow } from '@/lib/exchange/read-table'
import { type ImportedTube, type RowReading, readTubeRow } from '@/lib/exchange/read-tube-row'
import type { ColumnMapping } from '@/lib/exchange/tube-columns'
import { listAllMarks } from '@/lib/store/import'
import { breathe, isToStop, noteProgress } from './import-progress'

export type GoodRow = { readonly row: TableRow; readonly tube: ImportedTube }
export type CheckedTable = { readonly good: readonly GoodRow[]; readonly refused: readonly RefusedRow[] }

const ROWS_A_PIECE = 1000

export function rowReading(mapping: ColumnMapping, shop: Shop, now: Date): RowReading {
  const today: Day = dayInZone(now, shop.timeZone)
  const types = new Map<string, StockType>()
  const typeOf = (designation: string): StockType => {
    const known = types.get(designation) ?? stockType(designation, shop)
    types.set(designation, known)
    return known
  }
  const { currency } = shop
  return { mapping, currency, digits: minorDigits(currency), words: wordsFor(shop.words), today, typeOf }
}

/** Null when it was asked to stop. `id` names it in the progress; empty: a preview, not told of. */
export async function checkTable(id: string, table: Table, reading: RowReading): Promise<CheckedTable | null> {
  const marks = new Map<string, number>()
  const taken = await listAllMarks()
  const good: GoodRow[] = []
  const refused: RefusedRow[] = []
  for (const [place, row] of table.rows.entries()) {
    if (place % ROWS_A_PIECE === 0 && id !== '') {
      noteProgress(id, { phase: 'reading', done: place, total: table.rows.length })
      await breathe()
      if (isToStop(id)) return null
    }
    const read = readTubeRow(row.fields, reading)
    if (!read.ok) refused.push({ row, faults: read.faults })
    else {
      const fault = markFault(read.tube.details.mark, taken, marks)
      if (fault === null) good.push({ row, tube: read.tube })
      else refused.push({ row, faults: [{ column: 'mark', sentence: fault }] })
      if (read.tube.details.mark !== '') marks.set(read.tube.details.mark, row.number)
    }
  }
  return { good, refused }
}

function markFault(mark: string, taken: ReadonlySet<string>, marks: ReadonlyMap<string, number>): string | null {
  if (mark === '') return null
  if (taken.has(mark)) return `Mark: ${mark} already stands on another one here. Give this one another.`
  const first = marks.get(mark)
  return first === undefined ? null : `Mark: ${mark} stands in row ${first} already. Give this one another.`
}
