/** A paper that no longer holds: why, at the head of every page, and a stroke across it. */
import { artifact, drawLines, EMBER, type Sheet, type Style, type Tag, tagged } from './sheet'
import { wrapText } from './wrap-text'

const WARNING: Style = { font: 'bold', size: 9, ink: EMBER }
const TOP = 10
/** Room above the letterhead; above a running head there is less. */
const MOST_LINES = 2

export function drawTakenBack(sheet: Sheet, sentence: string, root: Tag): void {
  const { doc, left, width } = sheet
  const { start, count } = doc.bufferedPageRange()
  const lines = wrapText(doc, sentence, WARNING, width - 12)
  const draw = (most: number) => drawLines(doc, cut(lines, most), { x: left, y: TOP, width }, WARNING)
  for (let page = 0; page < count; page += 1) {
    doc.switchToPage(start + page)
    if (page === 0) tagged(doc, root, 'P', () => draw(MOST_LINES))
    else artifact(doc, () => draw(1), 'Pagination')
    artifact(doc, () => strike(sheet))
  }
}

function cut(lines: readonly string[], most: number): string[] {
  return lines.length <= most ? [...lines] : [...lines.slice(0, most - 1), `${lines[most - 1]} …`]
}

function strike({ doc, left, width, top, bottom }: Sheet): void {
  doc
    .save()
    .lineWidth(1.5)
    .strokeColor(EMBER)
    .moveTo(left, bottom)
    .lineTo(left + width, top)
    .stroke()
    .restore()
}
