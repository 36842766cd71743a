/** What is ticked, filled in and signed: operations, safety lines, signatures. */
import type { ChecklistBlock, SignatureLine, SignaturesBlock, SignOffBlock, SignOffLine, TableColumn } from '../paper'
import type { DrawnBlock, Piece } from './piece'
import {
  BLACK,
  BODY,
  drawLines,
  GREY,
  LABEL,
  lineHeight,
  openTag,
  rule,
  type Sheet,
  SMALL,
  type Style,
  tagged,
} from './sheet'
import { type CellText, gridFor } from './table-grid'
import { headPiece, type RowSpec, rowPieces } from './table-rows'
import { wrapText } from './wrap-text'

const TICK: Style = { font: 'regular', size: 12, ink: BLACK }

export function drawnChecklist(sheet: Sheet, block: ChecklistBlock): DrawnBlock {
  return {
    structure: 'L',
    pieces: block.items.map(({ text, detail, ticked }): Piece => {
      const { doc } = sheet
      const x = sheet.left + 20
      const width = sheet.width - 20
      const lines = wrapText(doc, text, BODY, width)
      const small = detail.trim() === '' ? [] : wrapText(doc, detail, LABEL, width)
      const main = lines.length * lineHeight(BODY)
      const draw: Piece['draw'] = (y, parent) => {
        const item = openTag(doc, parent, 'LI')
        const box = { x: sheet.left + 2, y: y + 1, width: 16 }
        tagged(doc, item, 'Lbl', () => drawLines(doc, [ticked ? '☑' : '☐'], box, TICK))
        tagged(doc, item, 'LBody', () => {
          drawLines(doc, lines, { x, y: y + 3, width }, BODY)
          drawLines(doc, small, { x, y: y + 3 + main, width }, LABEL)
        })
        item.end()
      }
      return { height: main + small.length * lineHeight(LABEL) + 6, spaceBefore: 0, keepsNext: false, draw }
    }),
  }
}

const SIGN_OFF: readonly TableColumn[] = [
  { label: 'Line', align: 'start', weight: 4 },
  { label: 'Limit', align: 'start', weight: 2.6 },
  { label: 'Value', align: 'start', weight: 2.4 },
  { label: 'Instrument, calibrated', align: 'start', weight: 3.4 },
  { label: 'Name', align: 'start', weight: 2.2 },
  { label: 'Time', align: 'start', weight: 2.2 },
  { label: 'Result', align: 'start', weight: 1.5 },
]

export function drawnSignOff(sheet: Sheet, block: SignOffBlock): DrawnBlock {
  const rows = block.lines.map(signOffRow)
  const grid = gridFor(
    sheet,
    SIGN_OFF,
    rows.map(({ cells }) => cells),
    SMALL,
  )
  const head = headPiece(sheet, grid)
  return { structure: 'Table', pieces: [head, ...rows.flatMap((row) => rowPieces(sheet, grid, row, head.again))] }
}

function signOffRow(line: SignOffLine): RowSpec {
  const open = line.state === 'open'
  const field = (text: string): CellText => ({ text, blank: open && text === '' })
  const reason = line.state === 'not-tested' && line.instrument === ''
  const middle = reason ? [{ text: line.value, span: 2 }] : [field(line.value), field(line.instrument)]
  const result: CellText = { ...field(line.result), strong: line.state === 'failed' }
  const cells = [{ text: line.line }, { text: line.limit }, ...middle, field(line.name), field(line.time), result]
  return { cells, detail: '', keepsNext: false, ruled: !open, leastHeight: open ? 23 : 0 }
}

/** Two who sign stand side by side; more, or one, below each other over the whole width. */
export function drawnSignatures(sheet: Sheet, block: SignaturesBlock): DrawnBlock {
  const side = block.lines.length === 2
  const rows = side ? [block.lines] : block.lines.map((line) => [line])
  return { structure: 'L', pieces: rows.map((lines, i) => signatureRow(sheet, lines, i < rows.length - 1)) }
}

const PEN_ROOM = 34
const BETWEEN = 24

function signatureRow(sheet: Sheet, row: readonly SignatureLine[], keepsNext: boolean): Piece {
  const { doc } = sheet
  const width = (sheet.width - BETWEEN * (row.length - 1)) / row.length
  const wide = width - 92
  const signers = row.map((line, i) => ({
    line,
    x: sheet.left + i * (width + BETWEEN),
    words: [line.label, line.name].filter((text) => text !== '').flatMap((text) => wrapText(doc, text, LABEL, wide)),
  }))
  const draw: Piece['draw'] = (y, parent) => {
    for (const { line, x, words } of signers) {
      const date = { x: x + wide + 10, width: 82 }
      rule(doc, x, y + PEN_ROOM, wide, GREY)
      rule(doc, date.x, y + PEN_ROOM, date.width, GREY)
      const item = openTag(doc, parent, 'LI')
      tagged(doc, item, 'LBody', () => {
        drawLines(doc, words, { x, y: y + PEN_ROOM + 2, width: wide }, LABEL)
        if (line.date !== '') drawLines(doc, [line.date], { ...date, y: y + PEN_ROOM - 15 }, BODY)
        drawLines(doc, ['Date'], { ...date, y: y + PEN_ROOM + 2 }, LABEL)
      })
      item.end()
    }
  }
  const tallest = Math.max(...signers.map(({ words }) => words.length))
  return { height: PEN_ROOM + 2 + tallest * lineHeight(LABEL), spaceBefore: 2, keepsNext, draw }
}
