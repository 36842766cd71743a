/**
 * Breaking text into lines that fit a width.
 *
 * Lines break at spaces. A word that is wider than the whole line breaks after
 * one of its own marks if that leaves a good part, else between letters: nothing
 * ever runs over the edge.
 */
import { type Doc, type Style, textWidth } from './sheet'

const letters = new Intl.Segmenter('en', { granularity: 'grapheme' })
const GOOD_BREAK = /[-/@._?=&:,;)\u00a0]/
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out
const CONTROL = /[\u0000-\u0009\u000b-\u001f\u007f\u00ad\u200b-\u200f\u2028-\u202e\u2060\ufeff]/g

/** Characters no printed line can carry become a space; the full-width yen sign becomes the plain one. */
export function printable(text: string): string {
  return text
    .normalize('NFC')
    .replace(/\r\n?|[\u2028\u2029]/g, '\n')
    .replace(CONTROL, ' ')
    .replace(/\uffe5/g, '¥')
}

export function wrapText(doc: Doc, text: string, style: Style, width: number): string[] {
  return printable(text)
    .trim()
    .split('\n')
    .flatMap((paragraph) => wrapParagraph(doc, paragraph, style, width))
}

function wrapParagraph(doc: Doc, paragraph: string, style: Style, width: number): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of paragraph.split(/ +/)) {
    const longer = line === '' ? word : `${line} ${word}`
    if (textWidth(doc, longer, style) <= width) {
      line = longer
      continue
    }
    if (line !== '') lines.push(line)
    const pieces = breakWord(doc, word, style, width)
    lines.push(...pieces.slice(0, -1))
    line = pieces.at(-1) ?? ''
  }
  return [...lines, line]
}

function breakWord(doc: Doc, word: string, style: Style, width: number): string[] {
  const pieces: string[] = []
  let rest = word
  while (textWidth(doc, rest, style) > width) {
    const head = fittingHead(doc, rest, style, width)
    pieces.push(head)
    rest = rest.slice(head.length)
  }
  return [...pieces, rest]
}

/** At least one letter, so that a width of nothing cannot loop for ever. */
function fittingHead(doc: Doc, word: string, style: Style, width: number): string {
  let head = ''
  let good = ''
  for (const { segment } of letters.segment(word)) {
    if (head !== '' && textWidth(doc, head + segment, style) > width) break
    head += segment
    if (GOOD_BREAK.test(segment)) good = head
  }
  return good.length > head.length / 3 ? good : head
}

/** Width of the widest word: what a column needs so that no word breaks. */
export function widestWord(doc: Doc, text: string, style: Style): number {
  return Math.max(
    0,
    ...printable(text)
      .split(/[ \n]+/)
      .map((word) => textWidth(doc, word, style)),
  )
}
