/**
 * How an import stands. The record alone says “running” of one whose server was stopped in the
 * middle; that it is not under way in this process, the only one, tells it was cut short.
 */
import { countImported, type Import, listOpenImports } from '@/lib/store/import'
import { importProgress } from './import-progress'

export type CutShort = {
  readonly import: Import
  /** While it was taken in, or while it was undone. */
  readonly during: 'taking-in' | 'undoing'
  /** Tubes that are in stock of it. */
  readonly written: number
  /** How to go on is known. */
  readonly canGoOn: boolean
}

/** Null: it is under way, or it came to an end. */
export async function cutShort(found: Import): Promise<CutShort | null> {
  if ((found.state !== 'running' && found.state !== 'undoing') || importProgress(found.id)) return null
  const during = found.state === 'running' ? 'taking-in' : 'undoing'
  const canGoOn = during === 'taking-in' && found.order !== null
  return { import: found, during, written: await countImported(found.id), canGoOn }
}

export async function listCutShort(): Promise<readonly CutShort[]> {
  const each = await Promise.all((await listOpenImports()).map(cutShort))
  return each.filter((one) => one !== null)
}

/** "stock.csv: the server was stopped while it was being taken in. 4000 of its 10000 rows are in stock." */
export function cutShortText({ import: { fileName, rows }, during, written }: CutShort): string {
  const there = written === 0 ? `none of its ${rows} rows is` : `${written} of its ${rows} rows are`
  const doing = during === 'undoing' ? 'undone' : 'taken in'
  return `${fileName}: the server was stopped while it was being ${doing}; ${there} in stock.`
}
