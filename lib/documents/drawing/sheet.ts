/** The page being drawn: its measures, its ink and the few ways of putting something on it. Lengths in points. */
export type Doc = PDFKit.PDFDocument
export type Tag = PDFKit.PDFStructureElement
export type Sheet = {
  readonly doc: Doc
  readonly left: number
  readonly width: number
  /** Where content starts on a page after the first. */
  readonly top: number
  readonly bottom: number
}

export type Style = {
  readonly font: 'regular' | 'bold'
  /** Never under 8.5. */
  readonly size: number
  readonly ink: string
}

export const BLACK = '#111111'
/** Labels: 7.5 to 1 on white. */
export const GREY = '#555555'
export const HAIRLINE = '#bbbbbb'
/** The one accent. */
export const EMBER = '#8f2d00'

export const BODY: Style = { font: 'regular', size: 9.5, ink: BLACK }
export const STRONG: Style = { font: 'bold', size: 9.5, ink: BLACK }
export const SMALL: Style = { font: 'regular', size: 8.5, ink: BLACK }
export const LABEL: Style = { font: 'regular', size: 8.5, ink: GREY }

export const lineHeight = (style: Style): number => style.size * 1.34

export function textWidth(doc: Doc, text: string, style: Style): number {
  return doc.font(style.font).fontSize(style.size).widthOfString(text)
}

export type Place = {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly align?: 'start' | 'end' | 'middle'
}

/** Draws lines that were wrapped to the width before; breaks nothing itself. */
export function drawLines(doc: Doc, lines: readonly string[], place: Place, style: Style): void {
  doc.font(style.font).fontSize(style.size).fillColor(style.ink)
  // The face's own line is 1.164 of its size; the rest of the line height is shared above and below.
  const lead = (lineHeight(style) - style.size * 1.164) / 2
  lines.forEach((line, i) => {
    if (line === '') return
    const free = place.width - doc.widthOfString(line)
    const shift = place.align === 'end' ? free : place.align === 'middle' ? free / 2 : 0
    doc.text(line, place.x + shift, place.y + lead + i * lineHeight(style), { lineBreak: false })
  })
}

/** What a reader for the blind skips: rules, boxes, running heads. */
export function artifact(doc: Doc, draw: () => void, kind: 'Layout' | 'Pagination' = 'Layout'): void {
  doc.markContent('Artifact', { type: kind })
  draw()
  doc.endMarkedContent()
}

export function rule(doc: Doc, x: number, y: number, width: number, ink: string, weight = 0.5): void {
  artifact(doc, () => {
    doc
      .moveTo(x, y)
      .lineTo(x + width, y)
      .lineWidth(weight)
      .strokeColor(ink)
      .stroke()
  })
}

type TagOptions = {
  alt?: string
  scope?: 'Column' | 'Row'
  bbox?: readonly [number, number, number, number]
}

/** A tag under a parent that is on the page already. */
export function openTag(doc: Doc, parent: Tag, type: string, options: TagOptions = {}): Tag {
  const tag = doc.struct(type, options)
  parent.add(tag)
  return tag
}

/** A tag with its content, drawn at once. */
export function tagged(doc: Doc, parent: Tag, type: string, draw: () => void, options: TagOptions = {}): void {
  const tag = openTag(doc, parent, type, options)
  tag.add(draw)
  tag.end()
}
