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
import { listAllMarks, listImportedIds } from '@/lib/store/import'
import { importedId } from '@/lib/store/tube-bulk'
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

/** Null when it was asked to stop. Rows in stock from before it was cut short are neither good nor refused. */
export async function checkTable(id: string, table: Table, reading: RowReading): Promise<CheckedTable | null> {
  const marks: Marks = { taken: await listAllMarks(), inFile: new Map() }
  const written = await listImportedIds(id)
  const good: GoodRow[] = []
  const refused: RefusedRow[] = []
  for (const [place, row] of table.rows.entries()) {
    if (place % ROWS_A_PIECE === 0) {
      noteProgress(id, { phase: 'reading', done: place, total: table.rows.length })
      await breathe()
      if (isToStop(id)) return null
    }
    const isIn = written.has(importedId(id, row.number))
    const read = readTubeRow(row.fields, reading)
    const faults = read.ok ? markFaults(read.tube.details.mark, marks) : read.faults
    if (read.ok && read.tube.details.mark !== '') marks.inFile.set(read.tube.details.mark, row.number)
    if (isIn) continue
    if (read.ok && faults.length === 0) good.push({ row, tube: read.tube })
    else refused.push({ row, faults })
  }
  return { good, refused }
}

type Marks = { readonly taken: ReadonlySet<string>; readonly inFile: Map<string, number> }

function markFaults(mark: string, { taken, inFile }: Marks): RefusedRow['faults'] {
  const sentence = markFault(mark, taken, inFile)
  return sentence === null ? [] : [{ column: 'mark', sentence }]
}

function markFault(mark: string, taken: ReadonlySet<string>, marks: ReadonlyMap<string, number>): string | null {
  if (mark === '') return null
  if (taken.has(mark)) return `Mark: ${mark} already stands on another one here. Give this one another.`
  const first = marks.get(mark)
  return first === undefined ? null : `Mark: ${mark} stands in row ${first} already. Give this one another.`
}
