/** Heading, paragraph, note and labelled facts. */
import type { Fact, FactsBlock, HeadingBlock, NoteBlock, ParagraphBlock } from '../paper'
import type { DrawnBlock, Piece } from './piece'
import {
  artifact,
  BLACK,
  BODY,
  drawLines,
  HAIRLINE,
  LABEL,
  lineHeight,
  openTag,
  rule,
  type Sheet,
  SMALL,
  type Style,
  tagged,
} from './sheet'
import { wrapText } from './wrap-text'

const HEADING: Style = { font: 'bold', size: 10.5, ink: BLACK }

export function drawnHeading(sheet: Sheet, block: HeadingBlock): DrawnBlock {
  const { doc, left, width } = sheet
  const lines = wrapText(doc, block.text, HEADING, width)
  const height = lines.length * lineHeight(HEADING) + 4
  const draw: Piece['draw'] = (y, parent) => {
    parent.add(() => drawLines(doc, lines, { x: left, y, width }, HEADING))
    rule(doc, left, y + height - 1, width, BLACK, 0.6)
  }
  return { structure: 'H2', pieces: [{ height: height + 1, spaceBefore: 11, keepsNext: true, draw }] }
}

type LinesLook = { readonly style: Style; readonly indent: number; readonly bar: boolean }

/** Line by line, so that a long text flows over pages; never one line alone on either side. */
function linePieces(sheet: Sheet, text: string, look: LinesLook): Piece[] {
  const { doc } = sheet
  const x = sheet.left + look.indent
  const width = sheet.width - look.indent
  const lines = wrapText(doc, text, look.style, width)
  const height = lineHeight(look.style)
  return lines.map((line, i) => ({
    height: i === lines.length - 1 ? height + 2 : height,
    spaceBefore: i === 0 ? 3 : 0,
    keepsNext: lines.length > 1 && (i === 0 || i === lines.length - 2),
    draw: (y, parent) => {
      parent.add(() => drawLines(doc, [line], { x, y, width }, look.style))
      if (look.bar) artifact(doc, () => doc.rect(sheet.left, y, 1.6, height).fill(HAIRLINE))
    },
  }))
}

export function drawnParagraph(sheet: Sheet, block: ParagraphBlock): DrawnBlock {
  const quoted = block.tone === 'quoted'
  const look = { style: BODY, indent: quoted ? 9 : 0, bar: quoted }
  return { structure: quoted ? 'BlockQuote' : 'P', pieces: linePieces(sheet, block.text, look) }
}

export function drawnNote(sheet: Sheet, block: NoteBlock): DrawnBlock {
  return { structure: 'P', pieces: linePieces(sheet, block.text, { style: SMALL, indent: 0, bar: false }) }
}

const GUTTER = 22
const LABEL_WIDTH = 84

export function drawnFacts(sheet: Sheet, block: FactsBlock): DrawnBlock {
  const rows: Fact[][] = []
  for (let i = 0; i < block.items.length; i += block.columns) rows.push(block.items.slice(i, i + block.columns))
  // A short list stays whole; the first line stands off from whatever is above.
  const whole = rows.length <= 4
  const pieces = rows.map((row, i) => ({
    ...factRow(sheet, row, block.columns),
    spaceBefore: i === 0 ? 3 : 0,
    keepsNext: whole && i < rows.length - 1,
  }))
  return { structure: 'L', pieces }
}

function factRow(sheet: Sheet, row: readonly Fact[], columns: number): Piece {
  const { doc } = sheet
  const width = (sheet.width - GUTTER * (columns - 1)) / columns
  const valueWidth = width - LABEL_WIDTH - 6
  const cells = row.map(({ label, value }, i) => ({
    x: sheet.left + i * (width + GUTTER),
    label: wrapText(doc, label, LABEL, LABEL_WIDTH),
    value: wrapText(doc, value, BODY, valueWidth),
  }))
  const heights = cells.map(({ label, value }) =>
    Math.max(label.length * lineHeight(LABEL), value.length * lineHeight(BODY)),
  )
  const height = Math.max(...heights) + 4
  const draw: Piece['draw'] = (y, parent) => {
    for (const { x, label, value } of cells) {
      const item = openTag(doc, parent, 'LI')
      // Half a point lower: the smaller label then stands on the line of the value.
      tagged(doc, item, 'Lbl', () => drawLines(doc, label, { x, y: y + 3, width: LABEL_WIDTH }, LABEL))
      const place = { x: x + LABEL_WIDTH + 6, y: y + 2.2, width: valueWidth }
      tagged(doc, item, 'LBody', () => drawLines(doc, value, place, BODY))
      item.end()
      rule(doc, x, y + height, width, HAIRLINE, 0.4)
    }
  }
  return { height, spaceBefore: 0, keepsNext: false, draw }
}
