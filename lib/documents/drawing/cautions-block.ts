/** The boxed cautions. The box stays whole unless it is taller than a page; then each page carries its part of it. */
import type { CautionsBlock } from '../paper'
import type { DrawnBlock, Piece } from './piece'
import {
  artifact,
  BLACK,
  BODY,
  drawLines,
  EMBER,
  lineHeight,
  openTag,
  type Sheet,
  SMALL,
  type Style,
  tagged,
} from './sheet'
import { wrapText } from './wrap-text'

const INSET = 12

export function drawnCautions(sheet: Sheet, block: CautionsBlock): DrawnBlock {
  const danger = block.level === 'danger'
  const style = danger ? BODY : SMALL
  const title: Style = { font: 'bold', size: danger ? 13 : 9.5, ink: danger ? EMBER : BLACK }
  const first = titlePiece(sheet, block.title, title, danger)
  const rest = block.items.flatMap((item, i) => itemPieces(sheet, item, style, danger, i === block.items.length - 1))
  return { structure: 'L', pieces: [first, ...rest] }
}

type Edge = { readonly top: boolean; readonly bottom: boolean; readonly danger: boolean }

function drawEdges(sheet: Sheet, y: number, height: number, { top, bottom, danger }: Edge): void {
  const { doc, left, width } = sheet
  artifact(doc, () => {
    doc.lineWidth(danger ? 1.8 : 0.9).strokeColor(danger ? EMBER : BLACK)
    for (const x of [left, left + width])
      doc
        .moveTo(x, y)
        .lineTo(x, y + height)
        .stroke()
    for (const [drawn, at] of [
      [top, y],
      [bottom, y + height],
    ] as const)
      if (drawn)
        doc
          .moveTo(left, at)
          .lineTo(left + width, at)
          .lineCap('square')
          .stroke()
    doc.lineCap('butt')
  })
}

function titlePiece(sheet: Sheet, text: string, style: Style, danger: boolean): Piece {
  const { doc } = sheet
  const width = sheet.width - 2 * INSET
  const lines = wrapText(doc, `⚠ ${text}`, style, width)
  const height = lines.length * lineHeight(style) + 9
  const draw: Piece['draw'] = (y, parent) => {
    drawEdges(sheet, y, height, { top: true, bottom: false, danger })
    const item = openTag(doc, parent, 'LI')
    tagged(doc, item, 'LBody', () => drawLines(doc, lines, { x: sheet.left + INSET, y: y + 7, width }, style))
    item.end()
  }
  return { height, spaceBefore: 12, keepsNext: true, draw }
}

/** One piece for an item, or one for each page-sized part of a very long one. */
function itemPieces(sheet: Sheet, text: string, style: Style, danger: boolean, last: boolean): Piece[] {
  const { doc } = sheet
  const x = sheet.left + INSET + 11
  const width = sheet.width - 2 * INSET - 11
  const lines = wrapText(doc, text, style, width)
  const most = Math.floor((sheet.bottom - sheet.top) / lineHeight(style)) - 4
  const parts: string[][] = []
  for (let from = 0; from < lines.length; from += most) parts.push(lines.slice(from, from + most))
  return parts.map((part, i) => {
    const closing = last && i === parts.length - 1
    const box = part.length * lineHeight(style) + (closing ? 8 : 1.5)
    const height = closing ? box + 6 : box
    const draw: Piece['draw'] = (y, parent) => {
      drawEdges(sheet, y, box, { top: false, bottom: closing, danger })
      const item = openTag(doc, parent, 'LI')
      const bullet = { x: sheet.left + INSET, y: y + 1, width: 11 }
      if (i === 0) tagged(doc, item, 'Lbl', () => drawLines(doc, ['•'], bullet, style))
      tagged(doc, item, 'LBody', () => drawLines(doc, part, { x, y: y + 1, width }, style))
      item.end()
    }
    return { height, spaceBefore: 0, keepsNext: !closing, draw }
  })
}
