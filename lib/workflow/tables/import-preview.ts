/** The first rows of a chosen file, what its columns are taken to mean, and what is wrong in the rows that were looked at. */
import type { Shop } from '@/lib/domain/shop/shop'
import { readTubeRow } from '@/lib/exchange/read-tube-row'
import {
  guessedColumns,
  headingsKey,
  TUBE_COLUMN_NAMES,
  TUBE_COLUMNS,
  type TubeColumn,
} from '@/lib/exchange/tube-columns'
import { findMapping } from '@/lib/store/import'
import { rowReading } from './check-import'
import { chosenTable } from './import-tubes'

export type ImportPreview = {
  readonly headings: readonly string[]
  readonly mapping: readonly (string | null)[]
  readonly rows: readonly (readonly string[])[]
  readonly options: readonly { readonly value: string; readonly text: string }[]
  /** Rows looked at for faults. */
  readonly looked: number
  readonly faults: readonly string[]
}

const SHOWN_ROWS = 8
const LOOKED_ROWS = 200
const SHOWN_FAULTS = 5

/** Null when the file is not at hand any more. */
export async function importPreview(id: string, shop: Shop, now: Date): Promise<ImportPreview | null> {
  const table = await chosenTable(id)
  if (!table) return null
  const { headings } = table
  const mapping = await knownMapping(headings)
  const reading = rowReading(mapping, shop, now)
  const looked = table.rows.slice(0, LOOKED_ROWS)
  const faults = looked.flatMap(({ number, fields }) => {
    const read = readTubeRow(fields, reading)
    return read.ok ? [] : [`Row ${number}: ${read.faults.map(({ sentence }) => sentence).join(' ')}`]
  })
  const options = TUBE_COLUMN_NAMES.map((value) => ({ value, text: TUBE_COLUMNS[value].heading }))
  const rows = table.rows.slice(0, SHOWN_ROWS).map(({ fields }) => fields)
  return { headings, mapping, rows, options, looked: looked.length, faults: faults.slice(0, SHOWN_FAULTS) }
}

/** As it was for these headings before; else as the headings themselves say. */
async function knownMapping(headings: readonly string[]): Promise<readonly (TubeColumn | null)[]> {
  const remembered = await findMapping(headingsKey(headings))
  if (remembered?.length !== headings.length) return guessedColumns(headings)
  return remembered.map((name) => TUBE_COLUMN_NAMES.find((each) => each === name) ?? null)
}
