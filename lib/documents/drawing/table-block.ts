/** Tables with groups and totals; figures stand at the right edge of their column. */
import type { TableBlock, TableRow } from '../paper'
import type { DrawnBlock, Piece } from './piece'
import { BLACK, BODY, drawLines, lineHeight, openTag, rule, type Sheet, SMALL, STRONG, tagged } from './sheet'
import { type CellText, gridFor } from './table-grid'
import { headPiece, type RowSpec, rowPieces } from './table-rows'
import { wrapText } from './wrap-text'

const rowSpec = (row: TableRow): RowSpec => ({
  cells: row.cells.map((text) => ({ text })),
  detail: row.detail ?? '',
  keepsNext: row.keepsNext ?? false,
  ruled: row.keepsNext !== true,
  leastHeight: 0,
})

export function drawnTable(sheet: Sheet, block: TableBlock): DrawnBlock {
  const style = block.columns.length > 5 ? SMALL : BODY
  const totals = block.totals.map(({ label, value, strong }) => ({
    label,
    cells: totalCells(block, label, value, strong),
  }))
  const texts = block.groups.flatMap(({ rows }) => rows.map(({ cells }) => cells.map((text) => ({ text }))))
  const grid = gridFor(sheet, block.columns, [...texts, ...totalWidths(block)], style)
  const head = headPiece(sheet, grid)
  const unlabelled = block.columns.every(({ label }) => label === '')
  const again = unlabelled ? undefined : head.again
  const groups = block.groups.flatMap(({ label, rows }, g) => [
    ...(label === '' ? [] : [groupPiece(sheet, label, again)]),
    ...rows.flatMap((row, i) => {
      const ends = g === block.groups.length - 1 && totals.length > 0
      const spec = rowSpec(row)
      return rowPieces(
        sheet,
        grid,
        { ...spec, keepsNext: spec.keepsNext || staysWithNext(rows.length, i, ends) },
        again,
      )
    }),
  ])
  const sums = totals.flatMap(({ cells }, i) => {
    const spec = { cells, detail: '', keepsNext: i < totals.length - 1, ruled: i === totals.length - 1, leastHeight: 0 }
    return rowPieces(sheet, grid, spec, again)
  })
  return {
    structure: 'Table',
    pieces: [...(unlabelled ? [] : [head]), ...groups, ...sums.map((piece, i) => overlined(sheet, piece, i === 0))],
  }
}

/** Four rows or fewer stay together, more leave no single row behind, and the last one stays with the totals. */
function staysWithNext(count: number, index: number, totalsFollow: boolean): boolean {
  if (index === count - 1) return totalsFollow
  return count <= 4 || index === count - 2
}

function totalCells(block: TableBlock, label: string, value: string, strong: boolean): CellText[] {
  return [
    { text: label, strong, span: block.columns.length - 1 },
    { text: value, strong },
  ]
}

/** Totals are the widest figures of the last column: they count for its width. */
function totalWidths(block: TableBlock): CellText[][] {
  return block.totals.map(({ value, strong }) =>
    block.columns.map((_, i) => ({
      text: i === block.columns.length - 1 ? value : '',
      strong,
    })),
  )
}

function groupPiece(sheet: Sheet, label: string, repeats: Piece['repeats']): Piece {
  const { doc, left, width } = sheet
  const lines = wrapText(doc, label, STRONG, width)
  const draw: Piece['draw'] = (y, parent) => {
    const row = openTag(doc, parent, 'TR')
    tagged(doc, row, 'TH', () => drawLines(doc, lines, { x: left, y: y + 5, width }, STRONG), { scope: 'Row' })
    row.end()
  }
  return { height: lines.length * lineHeight(STRONG) + 6, spaceBefore: 0, keepsNext: true, draw, repeats }
}

function overlined(sheet: Sheet, piece: Piece, first: boolean): Piece {
  if (!first) return piece
  return {
    ...piece,
    draw: (y, parent) => {
      rule(sheet.doc, sheet.left, y, sheet.width, BLACK, 0.6)
      piece.draw(y, parent)
    },
  }
}
