/**
 * Column widths of a table. Columns start at their weights; one whose widest
 * word does not fit takes what it needs from those that have room.
 */
import type { TableColumn } from '../paper'
import { type Doc, LABEL, type Sheet, type Style } from './sheet'
import { widestWord } from './wrap-text'

const GAP = 8
/** A word wider than this share of the table breaks rather than starve the other columns. */
const WIDEST_LEAST = 0.25

export type CellText = {
  readonly text: string
  readonly strong?: boolean
  /** A rule to write on. */
  readonly blank?: boolean
  /** Columns taken, from this one on; the cells taken are left out of the row. */
  readonly span?: number
}
export type Grid = {
  readonly columns: readonly TableColumn[]
  readonly x: readonly number[]
  readonly widths: readonly number[]
  readonly style: Style
}

export function gridFor(
  sheet: Sheet,
  columns: readonly TableColumn[],
  rows: readonly (readonly CellText[])[],
  style: Style,
): Grid {
  const free = sheet.width - GAP * (columns.length - 1)
  const weights = columns.reduce((total, { weight }) => total + weight, 0)
  const wanted = columns.map(({ weight }) => (free * weight) / weights)
  const least = columns.map(({ label }, i) => {
    const words = rows.map((cells) => leastWidth(sheet.doc, cells, i, style))
    return Math.min(free * WIDEST_LEAST, Math.max(widestWord(sheet.doc, label, LABEL), ...words) + 0.5)
  })
  const widths = sharedWidths(wanted, least)
  const x = widths.map((_, i) => sheet.left + widths.slice(0, i).reduce((sum, width) => sum + width + GAP, 0))
  return { columns, x, widths, style }
}

function leastWidth(doc: Doc, cells: readonly CellText[], index: number, style: Style): number {
  if (cells.some(({ span }) => span !== undefined && span > 1)) return 0
  const cell = cells[index]
  return cell === undefined ? 0 : widestWord(doc, cell.text, cell.strong === true ? { ...style, font: 'bold' } : style)
}

/** What the narrow ones lack is taken from the others in the measure of what they can spare. */
function sharedWidths(wanted: readonly number[], least: readonly number[]): number[] {
  const lacks = wanted.map((width, i) => Math.max(0, (least[i] ?? 0) - width))
  const spares = wanted.map((width, i) => Math.max(0, width - (least[i] ?? 0)))
  const lack = lacks.reduce((sum, width) => sum + width, 0)
  const spare = spares.reduce((sum, width) => sum + width, 0)
  const granted = lack === 0 ? 0 : Math.min(1, spare / lack)
  const taken = spare === 0 ? 0 : (lack * granted) / spare
  return wanted.map((width, i) => width + (lacks[i] ?? 0) * granted - (spares[i] ?? 0) * taken)
}

export const spanWidth = (grid: Grid, from: number, span: number): number =>
  grid.widths.slice(from, from + span).reduce((sum, width) => sum + width, 0) + GAP * (span - 1)
