/**
 * A type number as printed, taken apart by the scheme it belongs to. Reads only; whether a type of that
 * number is known is for find-tube-type.ts.
 *
 * "JAN", with or without maker letters, stands before the number. Numbers joined by a stroke are read
 * one by one, but "GT/G" is one suffix.
 */
import { readBritishLetters } from './british-letters'
import { asLatin, readCyrillicNumber } from './cyrillic-number'
import { type DesignationReading, NO_SUFFIX, type Part, type SchemeReading } from './designation-reading'
import { readEuropeanNumber } from './european-number'
import { readServiceNumber } from './service-number'
import { readUsNumber } from './us-number'

const JAN = /^JAN(?:[\s-]+([A-Z]{2,4})(?=[\s-]+\S))?[\s-]*(.*)$/

const JAN_PART: Part = {
  text: 'JAN',
  meaning: 'Joint Army-Navy: bought to the military specification (JAN-1A, later MIL-E-1)',
  source: 'memory',
}

const janMakerPart = (text: string): Part => ({
  text,
  meaning:
    'maker letters of the specification: the maker, not the brand on the carton. Whose they are is not kept here',
  source: 'memory',
})

const UNREAD: SchemeReading = {
  scheme: 'not-recognised',
  standard: null,
  stem: null,
  ownMark: null,
  suffix: NO_SUFFIX,
  parts: [],
  remarks: [],
}

const tidied = (text: string): string =>
  text
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[‐‑‒–—−]/g, '-')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/^TYPE[\s-]+(?=\d)/, '')

/** "6P3S": П as P, Н as N, С as S. "6H8C": Н and С typed as the Latin letters that look like them. */
const TRANSLITERATED = /^\d{1,2}(?:[NPSKFZ]H?\d{1,2}[SP]|[HCK]\d{1,2}C)(?![A-FH-Z])/

/** A Latin writing of a Cyrillic number also looks like a US one: both are said. */
function withTransliteration(reading: SchemeReading, text: string): SchemeReading {
  if (!reading.scheme.startsWith('us-') || !TRANSLITERATED.test(text)) return reading
  const sentence =
    'This may be a Cyrillic number in Latin letters (П as P, Н as N or H, С as S or C), not a US one: look for Cyrillic print.'
  return { ...reading, remarks: [...reading.remarks, { sentence, source: 'memory' }] }
}

function readOne(asked: string): Omit<DesignationReading, 'alsoNamed'> {
  const [, janMaker = null, afterJan] = JAN.exec(asked) ?? []
  const jan = afterJan !== undefined
  const text = asLatin(jan ? afterJan : asked)
  const read =
    readServiceNumber(text) ??
    readCyrillicNumber(text) ??
    readBritishLetters(text) ??
    readEuropeanNumber(text) ??
    readUsNumber(text) ??
    UNREAD
  const { parts, ...reading } = withTransliteration(read, text)
  const before = jan ? [JAN_PART, ...(janMaker ? [janMakerPart(janMaker)] : [])] : []
  return { asked, jan, janMaker, ...reading, parts: [...before, ...parts] }
}

const STROKE = /\s*\/\s*(?!G\b)/

/** The stroke of an inspection mark ("CV491 KB/D") joins no two numbers. */
function withInspectionMarks(asked: string): string[] {
  const numbers: string[] = []
  for (const piece of asked.split(STROKE)) {
    const before = numbers.at(-1)
    if (before === undefined || /\d/.test(piece)) numbers.push(piece)
    else numbers.splice(-1, 1, `${before}/${piece}`)
  }
  return numbers
}

/** Never fails: what no scheme knows is 'not-recognised'. */
export function readDesignation(text: string): DesignationReading {
  const asked = tidied(text)
  const numbers = asked.startsWith('CV') ? withInspectionMarks(asked) : asked.split(STROKE)
  const [first, ...others] = numbers.map((one) => ({ ...readOne(one), alsoNamed: [] }))
  if (!first) throw new Error(`"${asked}" split into no number at all`)
  return { ...first, asked, alsoNamed: others }
}
