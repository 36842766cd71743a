/** A QR code drawn as squares, so it prints sharp at any size. */
import { encode } from 'uqr'
import type { QrBlock } from '../paper'
import type { DrawnBlock, Piece } from './piece'
import { BODY, type Doc, drawLines, LABEL, lineHeight, openTag, type Sheet, type Tag, tagged } from './sheet'
import { wrapText } from './wrap-text'

export const QR_SIDE = 62

/** A quiet zone of four squares belongs to the code (ISO/IEC 18004, from memory) and is within `side`. */
export function drawCode(doc: Doc, text: string, x: number, y: number, side: number): void {
  const { data, size } = encode(text, { ecc: 'M', border: 4 })
  const step = side / size
  doc.fillColor('#000000')
  data.forEach((row, r) => {
    row.forEach((dark, c) => {
      // A hair of overlap: otherwise some viewers show white seams between the squares.
      if (dark) doc.rect(x + c * step, y + r * step, step + 0.05, step + 0.05)
    })
  })
  doc.fill()
}

export function drawQr(doc: Doc, parent: Tag, block: QrBlock, x: number, y: number): void {
  const bbox = [x, y, x + QR_SIDE, y + QR_SIDE] as const
  const alt = `QR code: ${block.caption}, ${block.text}`
  tagged(doc, parent, 'Figure', () => drawCode(doc, block.text, x, y, QR_SIDE), { alt, bbox })
}

export function drawnQr(sheet: Sheet, block: QrBlock): DrawnBlock {
  const { doc, left } = sheet
  const x = left + QR_SIDE + 8
  const width = sheet.width - QR_SIDE - 8
  const caption = wrapText(doc, block.caption, BODY, width)
  const address = wrapText(doc, block.text, LABEL, width)
  const main = caption.length * lineHeight(BODY)
  const height = Math.max(QR_SIDE, main + address.length * lineHeight(LABEL) + 12)
  const draw: Piece['draw'] = (y, parent) => {
    drawQr(doc, parent, block, left, y)
    const words = openTag(doc, parent, 'P')
    words.add(() => {
      drawLines(doc, caption, { x, y: y + 8, width }, BODY)
      drawLines(doc, address, { x, y: y + 8 + main, width }, LABEL)
    })
    words.end()
  }
  return { structure: 'Div', pieces: [{ height, spaceBefore: 8, keepsNext: false, draw }] }
}
