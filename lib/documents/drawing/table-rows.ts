/** Head and rows of a table. The head is repeated on each page; a row is never split unless it is taller than one. */
import type { Piece } from './piece'
import {
  BODY,
  drawLines,
  GREY,
  HAIRLINE,
  LABEL,
  lineHeight,
  openTag,
  rule,
  type Sheet,
  type Style,
  type Tag,
  tagged,
} from './sheet'
import { type CellText, type Grid, spanWidth } from './table-grid'
import { wrapText } from './wrap-text'

const PAD = 2.6

export type RowSpec = {
  readonly cells: readonly CellText[]
  readonly detail: string
  readonly keepsNext: boolean
  /** A hairline under the row. */
  readonly ruled: boolean
  readonly leastHeight: number
}
export function headPiece(sheet: Sheet, grid: Grid): Piece & { readonly again: NonNullable<Piece['repeats']> } {
  const { doc, left, width } = sheet
  const labels = grid.columns.map(({ label }, i) => wrapText(doc, label, LABEL, grid.widths[i] ?? 0))
  const tall = Math.max(...labels.map((lines) => lines.length))
  const height = tall * lineHeight(LABEL) + 4
  const drawLabel = (i: number, y: number): void => {
    const lines = labels[i] ?? []
    const lowered = y + 1 + (tall - lines.length) * lineHeight(LABEL)
    const place = { x: grid.x[i] ?? left, y: lowered, width: grid.widths[i] ?? 0, align: grid.columns[i]?.align }
    drawLines(doc, lines, place, LABEL)
  }
  const edge = (y: number): void => rule(doc, left, y + height, width, HAIRLINE, 0.5)
  const draw: Piece['draw'] = (y, parent) => {
    const row = openTag(doc, parent, 'TR')
    labels.forEach((_, i) => {
      tagged(doc, row, 'TH', () => drawLabel(i, y), { scope: 'Column' })
    })
    row.end()
    edge(y)
  }
  const again = {
    height: height + 1,
    draw: (y: number) => {
      doc.markContent('Artifact', { type: 'Pagination' })
      labels.forEach((_, i) => {
        drawLabel(i, y)
      })
      doc.endMarkedContent()
      edge(y)
    },
  }
  return { height: height + 1, spaceBefore: 2, keepsNext: true, draw, again }
}

type PlacedCell = { readonly lines: string[]; readonly style: Style; readonly index: number; readonly cell: CellText }

export function rowPieces(sheet: Sheet, grid: Grid, row: RowSpec, repeats: Piece['repeats']): Piece[] {
  const { doc } = sheet
  let index = 0
  const cells = row.cells.map((cell): PlacedCell => {
    const style: Style = cell.strong === true ? { ...grid.style, font: 'bold' } : grid.style
    const at = index
    index += cell.span ?? 1
    return { lines: wrapText(doc, cell.text, style, spanWidth(grid, at, cell.span ?? 1)), style, index: at, cell }
  })
  const detail = row.detail === '' ? [] : wrapText(doc, row.detail, LABEL, sheet.width - 10)
  return splitTall(sheet, cells, detail).map((part, i, parts) => {
    const last = i === parts.length - 1
    return rowPiece(sheet, grid, { ...part, row, keepsNext: last && row.keepsNext, ruled: last && row.ruled }, repeats)
  })
}

type RowPart = { readonly cells: readonly PlacedCell[]; readonly detail: readonly string[] }

/** A row taller than a page is the one that must be split, or it would be cut. */
function splitTall(sheet: Sheet, cells: readonly PlacedCell[], detail: readonly string[]): RowPart[] {
  const most = Math.floor((sheet.bottom - sheet.top) / lineHeight(BODY)) - 6
  const tall = Math.max(...cells.map(({ lines }) => lines.length))
  if (tall + detail.length <= most) return [{ cells, detail }]
  const parts: RowPart[] = []
  for (let from = 0; from < tall; from += most)
    parts.push({ cells: cells.map((cell) => ({ ...cell, lines: cell.lines.slice(from, from + most) })), detail: [] })
  for (let from = 0; from < detail.length; from += most)
    parts.push({ cells: cells.map((cell) => ({ ...cell, lines: [] })), detail: detail.slice(from, from + most) })
  return parts
}

type RowToDraw = RowPart & { readonly row: RowSpec; readonly keepsNext: boolean; readonly ruled: boolean }

function rowPiece(sheet: Sheet, grid: Grid, part: RowToDraw, repeats: Piece['repeats']): Piece {
  const { doc, left, width } = sheet
  const main = Math.max(...part.cells.map(({ lines, style }) => lines.length * lineHeight(style)))
  const height = Math.max(part.row.leastHeight, main + part.detail.length * lineHeight(LABEL) + 2 * PAD)
  const draw: Piece['draw'] = (y, parent) => {
    const tag = openTag(doc, parent, 'TR')
    for (const placed of part.cells) {
      drawCell(sheet, grid, placed, y, tag, () => {
        if (placed.index > 0) return
        drawLines(doc, part.detail, { x: left + 10, y: y + PAD + main, width: width - 10 }, LABEL)
      })
      if (placed.cell.blank === true)
        rule(doc, grid.x[placed.index] ?? left, y + height - 2, spanWidth(grid, placed.index, 1), GREY, 0.5)
    }
    tag.end()
    if (part.ruled) rule(doc, left, y + height, width, HAIRLINE, 0.4)
  }
  return { height, spaceBefore: 0, keepsNext: part.keepsNext, draw, repeats }
}

function drawCell(sheet: Sheet, grid: Grid, placed: PlacedCell, y: number, row: Tag, rest: () => void): void {
  const { lines, style, index, cell } = placed
  const place = {
    x: grid.x[index] ?? sheet.left,
    y: y + PAD,
    width: spanWidth(grid, index, cell.span ?? 1),
    align: grid.columns[index]?.align,
  }
  tagged(sheet.doc, row, 'TD', () => {
    drawLines(sheet.doc, lines, place, style)
    rest()
  })
}
