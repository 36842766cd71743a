/**
 * Labels of tubes as PDF: a code that opens the tube's page, its mark, type and
 * test. The size of the type follows the label; a line that is too long is set
 * smaller and, at the least size, cut with an ellipsis. Lengths come in
 * millimetres and are drawn in points, 72 to the inch.
 */
import PDFDocument from 'pdfkit'
import { type LabelSheetDetails, labelPlace } from '@/lib/domain/stock/label/label-sheet'
import type { LabelText } from '@/lib/domain/stock/label/label-text'
import { paperFonts } from './drawing/fonts'
import { drawCode } from './drawing/qr-block'
import { BLACK, type Doc, openTag, type Style, type Tag, textWidth } from './drawing/sheet'
import { printable } from './drawing/wrap-text'
import { collected } from './pdf'

export type Label = LabelText & { readonly address: string }

export type LabelOrder = {
  readonly sheet: LabelSheetDetails
  /** Place of the first label on the first page, from 1. */
  readonly start: number
  readonly labels: readonly Label[]
  readonly shopName: string
  readonly language: 'en-US' | 'en-GB'
}

const POINTS = 72 / 25.4
/** Inside of a label, mm. */
const PADDING = 1.6
const LEAST_SIZE = 4.5

export async function renderLabels(
  order: LabelOrder,
  { createdAt }: { readonly createdAt: Date },
): Promise<Uint8Array> {
  const fonts = await paperFonts()
  const { sheet, labels, start } = order
  const size: [number, number] = [sheet.pageWidth * POINTS, sheet.pageHeight * POINTS]
  const doc = new PDFDocument({
    ...{
      size,
      margin: 0,
      autoFirstPage: false,
      tagged: true,
      lang: order.language,
      displayTitle: true,
      pdfVersion: '1.7',
    },
    info: { Title: 'Labels', Author: order.shopName, CreationDate: createdAt, ModDate: createdAt },
  })
  doc.registerFont('regular', fonts.regular).registerFont('bold', fonts.bold)
  const bytes = collected(doc)
  const root = doc.struct('Document')
  doc.addStructure(root)
  let page = -1
  for (const [index, label] of labels.entries()) {
    const place = labelPlace(sheet, start, index)
    for (; page < place.page; page++) doc.addPage()
    drawLabel(doc, root, label, {
      x: (place.x + PADDING) * POINTS,
      y: (place.y + PADDING) * POINTS,
      width: (sheet.labelWidth - 2 * PADDING) * POINTS,
      height: (sheet.labelHeight - 2 * PADDING) * POINTS,
    })
  }
  root.end()
  doc.end()
  return bytes
}

type Box = { readonly x: number; readonly y: number; readonly width: number; readonly height: number }

function drawLabel(doc: Doc, root: Tag, label: Label, { x, y, width, height }: Box): void {
  const side = Math.min(height, width * 0.42)
  const top = y + (height - side) / 2
  const code = openTag(doc, root, 'Figure', {
    alt: `QR code: page of ${label.mark}, ${label.address}`,
    bbox: [x, top, x + side, top + side],
  })
  code.add(() => drawCode(doc, label.address, x, top, side))
  code.end()
  const words = openTag(doc, root, 'P')
  words.add(() => drawWords(doc, label, { x: x + side + 3, y, width: width - side - 3, height }))
  words.end()
}

/** Shares of the height: mark, type, then each line of the test. */
const MARK_SHARE = 1.7
const TYPE_SHARE = 1.25

function drawWords(doc: Doc, { mark, designation, lines }: Label, box: Box): void {
  const shares = [MARK_SHARE, TYPE_SHARE, ...lines.map(() => 1)]
  const unit = Math.min(box.height / shares.reduce((sum, share) => sum + share, 0), 11)
  let y = box.y + (box.height - unit * shares.reduce((sum, share) => sum + share, 0)) / 2
  for (const [place, text] of [mark, designation, ...lines].entries()) {
    const share = shares[place] ?? 1
    drawLine(doc, printable(text), { ...box, y, height: unit * share }, place < 2 ? 'bold' : 'regular')
    y += unit * share
  }
}

function drawLine(doc: Doc, text: string, { x, y, width, height }: Box, font: Style['font']): void {
  const style = (size: number): Style => ({ font, size, ink: BLACK })
  // The face's own line is 1.164 of its size.
  let size = height / 1.164
  while (size > LEAST_SIZE && textWidth(doc, text, style(size)) > width) size -= 0.25
  let shown = text
  while (shown.length > 1 && textWidth(doc, shown, style(size)) > width) shown = `${shown.slice(0, -2)}…`
  doc
    .font(font)
    .fontSize(size)
    .fillColor(BLACK)
    .text(shown, x, y + (height - size * 1.164) / 2, { lineBreak: false })
}
