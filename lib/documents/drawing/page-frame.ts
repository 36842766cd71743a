/** What surrounds the content: letterhead on the first page, a running head on the others, page numbers on all. */
import type { Paper, QrBlock } from '../paper'
import { drawQr, QR_SIDE } from './qr-block'
import {
  artifact,
  BLACK,
  type Doc,
  drawLines,
  EMBER,
  HAIRLINE,
  LABEL,
  lineHeight,
  rule,
  type Sheet,
  type Style,
  type Tag,
  tagged,
  textWidth,
} from './sheet'
import { wrapText } from './wrap-text'

const SHOP: Style = { font: 'bold', size: 13, ink: BLACK }
const TITLE: Style = { font: 'bold', size: 20, ink: BLACK }
const HEAD_TOP = 34
const CAPTION_WIDTH = 80

/** Returns where the content starts. */
export function drawLetterhead(sheet: Sheet, paper: Paper, qr: QrBlock | null, root: Tag): number {
  const { doc, left } = sheet
  const width = qr === null ? sheet.width : sheet.width - QR_SIDE - CAPTION_WIDTH - 10
  const { letterhead } = paper
  const name = wrapText(doc, letterhead.name, SHOP, width)
  const reach = [letterhead.phone, letterhead.email].filter((text) => text.trim() !== '').join(' · ')
  const where = [letterhead.addressLines.filter((line) => line.trim() !== '').join(', '), reach]
  const address = where.filter((line) => line !== '').flatMap((line) => wrapText(doc, line, LABEL, width))
  const nameHeight = name.length * lineHeight(SHOP)
  tagged(doc, root, 'P', () => {
    drawLines(doc, name, { x: left, y: HEAD_TOP, width }, SHOP)
    drawLines(doc, address, { x: left, y: HEAD_TOP + nameHeight + 1, width }, LABEL)
  })
  const words = HEAD_TOP + nameHeight + 1 + address.length * lineHeight(LABEL)
  return drawTitle(sheet, paper, root, qr === null ? words : Math.max(words, drawHeadQr(sheet, qr, root)))
}

/** The caption stands left of the code, on its foot. */
function drawHeadQr(sheet: Sheet, qr: QrBlock, root: Tag): number {
  const { doc } = sheet
  const x = sheet.left + sheet.width - QR_SIDE
  const lines = wrapText(doc, qr.caption, LABEL, CAPTION_WIDTH)
  const foot = HEAD_TOP - 8 + QR_SIDE
  drawQr(doc, root, qr, x, HEAD_TOP - 8)
  const place = { x: x - CAPTION_WIDTH, y: foot - 6 - lines.length * lineHeight(LABEL), width: CAPTION_WIDTH }
  tagged(doc, root, 'P', () => drawLines(doc, lines, { ...place, align: 'end' }, LABEL))
  return foot - 4
}

function drawTitle(sheet: Sheet, paper: Paper, root: Tag, above: number): number {
  const { doc, left, width } = sheet
  const y = above + 5
  rule(doc, left, y, width, EMBER, 1.6)
  const half = width / 2 - 6
  const title = wrapText(doc, paper.title, TITLE, half)
  const number = wrapText(doc, paper.number, TITLE, half)
  tagged(doc, root, 'H1', () => {
    drawLines(doc, title, { x: left, y: y + 8, width: half }, TITLE)
    drawLines(doc, number, { x: left + width / 2 + 6, y: y + 8, width: half, align: 'end' }, TITLE)
  })
  const issued = `Issued ${paper.issuedOn}`
  const below = y + 8 + Math.max(title.length, number.length) * lineHeight(TITLE)
  const room = width - textWidth(doc, title[0] ?? '', TITLE) - textWidth(doc, number[0] ?? '', TITLE) - 24
  // On the line of the title where there is room, under it where there is not.
  const beside = title.length === 1 && number.length === 1 && textWidth(doc, issued, LABEL) <= room
  const x = beside ? left + textWidth(doc, title[0] ?? '', TITLE) + 10 : left
  const issuedY = beside ? below - lineHeight(LABEL) - 5.6 : below
  tagged(doc, root, 'P', () => drawLines(doc, [issued], { x, y: issuedY, width }, LABEL))
  return beside ? below + 4 : below + lineHeight(LABEL) + 8
}

/** One line: what stands whole on the first page may be shortened on the others, and shows that it was. */
function shortened(doc: Doc, text: string, width: number): string[] {
  const [first = '', ...more] = wrapText(doc, text, LABEL, width - 10)
  return [more.length === 0 ? first : `${first} …`]
}

export function drawRunningHead(sheet: Sheet, paper: Paper): void {
  const { doc, left, width } = sheet
  const half = width / 2 - 6
  const own = shortened(doc, `${paper.title} ${paper.number}`, half)
  const shop = shortened(doc, paper.letterhead.name, half)
  artifact(
    doc,
    () => {
      drawLines(doc, own, { x: left, y: HEAD_TOP - 6, width: half }, LABEL)
      drawLines(doc, shop, { x: left + width / 2 + 6, y: HEAD_TOP - 6, width: half, align: 'end' }, LABEL)
    },
    'Pagination',
  )
  rule(doc, left, HEAD_TOP + 8, width, HAIRLINE)
}

export function drawPageNumbers(sheet: Sheet, paper: Paper): void {
  const { doc, left, width } = sheet
  const { start, count } = doc.bufferedPageRange()
  const own = shortened(doc, `${paper.title} ${paper.number}`, width * 0.6)
  for (let i = 0; i < count; i++) {
    doc.switchToPage(start + i)
    const y = doc.page.height - 32
    artifact(
      doc,
      () => {
        drawLines(doc, own, { x: left, y, width: width * 0.6 }, LABEL)
        drawLines(doc, [`page ${i + 1} of ${count}`], { x: left, y, width, align: 'end' }, LABEL)
      },
      'Pagination',
    )
  }
}
