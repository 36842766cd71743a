/**
 * Breaking lettering into lines without measuring it: widths are estimated from
 * a wide sans face, so that whatever face the reader has, a line fits. A word
 * that is too wide on its own is squeezed by the drawing.
 */
export type Line = { readonly text: string; readonly squeezed: boolean }

/** Em widths, from memory of a common wide sans face; rounded up. */
function characterWidth(character: string): number {
  if (/[ilj.,:;'|!·()\s/-]/.test(character)) return 0.36
  if (/[frt]/.test(character)) return 0.43
  if (/[mwMW%@±–—]/.test(character)) return 0.95
  if (/[A-Z]/.test(character)) return 0.7
  return 0.63
}

export const estimatedWidth = (text: string, size: number): number =>
  [...text].reduce((width, character) => width + characterWidth(character) * size, 0)

/** Most faces run narrower than the estimate; a line this much over it still stays whole. */
const TOLERATED = 1.07

function wrapAt(text: string, separator: RegExp, glue: string, fits: (line: string) => boolean): readonly string[] {
  const lines: string[] = []
  for (const part of text.split(separator)) {
    const last = lines.at(-1)
    const joined = last === undefined ? part : `${last}${glue}${part}`
    if (last !== undefined && fits(joined)) lines[lines.length - 1] = joined
    else lines.push(part)
  }
  return lines
}

/** Breaks at " · " first, then at spaces. */
export function brokenLines(text: string, size: number, width: number): readonly Line[] {
  const fits = (line: string) => estimatedWidth(line, size) <= width * TOLERATED
  const whole = text.trim()
  const parts = fits(whole) ? [whole] : wrapAt(whole, / · /, ' · ', fits)
  const lines = parts.flatMap((part) => (fits(part) ? [part] : wrapAt(part, /\s+/, ' ', fits)))
  return lines.map((line) => ({ text: line, squeezed: !fits(line) }))
}
