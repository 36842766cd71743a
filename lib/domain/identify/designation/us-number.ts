/**
 * US numbers: heater figure, serial letters, count of elements, suffix (RMA → RETMA → EIA);
 * four-figure industrial numbers; and the plain figures older than both.
 *
 * The letters are serial and say nothing of the function, except that rectifiers run backwards
 * from Z; the last figure counts elements, but not reliably, so nothing is refused by it.
 */
import { REGISTERED_AS_METAL } from '../knowledge/numbers/further-versions'
import { NO_SUFFIX, ownMarkParts, type Part, type Remark, type SchemeReading } from './designation-reading'
import { readUsSuffix } from './us-suffix'

// I and O are not used.
const RECEIVING = /^(\d{1,2})[\s-]*([A-HJ-NP-Z]{1,2})[\s-]*(\d)(?!\d)(.*)$/
const INDUSTRIAL = /^(\d{4})(?!\d)(.*)$/
// "300B", "300 B", "300B-QX" and "300BQX", but not "12E13".
const OLDER = /^(\d{2,3})(?!\d)(?:(?:\s(?=[AB]$))?([AB])([A-Z]{1,4}(?![A-Z\d]))?)?(?:[\s-]+(.+))?$/
const PREFIXED = /^([A-Z]{2,4})-?(\d.*)$/

const HEATERS: Readonly<Record<string, string>> = {
  '0': 'cold cathode, no heater',
  '1': 'heater or filament up to 1.6 V (and most 2.0 V types)',
  '5': 'heater or filament of 4.6 to 5.6 V',
  '6': 'heater of 5.6 to 6.6 V',
  '7': 'heater of 6.3 V, lock-in base by custom',
  '12': 'heater of 12.6 V; a tapped heater is named by its two halves in series',
}

const heaterPart = (figure: string): Part => ({
  text: figure,
  meaning: HEATERS[figure] ?? `heater or filament of about ${figure} V`,
  source: 'radiotron',
})

/** 5-volt types, and X, Y, Z at any voltage; V of 6V6 is only a serial letter. */
const isRectifierLetter = (volts: string, letters: string): boolean =>
  /^[X-Z]$/.test(letters) || (volts === '5' && /^[T-W]$/.test(letters))

function lettersPart(volts: string, letters: string): Part {
  if (letters.startsWith('S') && letters.length === 2)
    return { text: letters, meaning: 'serial letters; the first, S, is for single-ended', source: 'radiotron' }
  if (isRectifierLetter(volts, letters))
    return {
      text: letters,
      meaning: 'serial letter; rectifiers run backwards from Z. Not the Y or Z of the European letters',
      source: 'radiotron',
    }
  return { text: letters, meaning: 'serial letters: they do not tell the function', source: 'radiotron' }
}

const countPart = (figure: string): Part => ({
  text: figure,
  meaning: 'count of useful elements, a metal shell included; inconsistent, so no check',
  source: 'retma',
})

const BARE_OCTAL: Remark = {
  sentence:
    'A type registered as metal bears no suffix on the metal version. Today the suffix is often left off glass bottles: look, do not assume.',
  source: 'memory',
}

/** 12AX7S, 6V6S: the scheme has the letter, and present makers write it for themselves. */
const loneLetter = (letter: string): Remark => ({
  sentence: `${letter} alone behind the number is read by the scheme of old; on newer bottles it mostly is a maker’s own letter.`,
  source: 'practice',
})

function receiving(text: string): SchemeReading | null {
  const [, volts = '', letters = '', count = '', tail = ''] = RECEIVING.exec(text) ?? []
  if (volts === '') return null
  const stem = `${volts}${letters}${count}`
  const { suffix, text: known, rest, parts } = readUsSuffix(tail)
  const ownMark = rest === '' ? null : rest
  return {
    scheme: 'us-receiving',
    standard: stem + known,
    stem,
    ownMark,
    suffix,
    parts: [
      heaterPart(volts),
      lettersPart(volts, letters),
      countPart(count),
      ...parts,
      ...ownMarkParts(ownMark, 'US scheme'),
    ],
    remarks: [
      ...(known === '' && REGISTERED_AS_METAL.includes(stem) ? [BARE_OCTAL] : []),
      ...(/^[ELMS]$/.test(known) ? [loneLetter(known)] : []),
    ],
  }
}

function industrial(text: string): SchemeReading | null {
  const [, figures = '', tail = ''] = INDUSTRIAL.exec(text) ?? []
  if (figures === '') return null
  const { suffix, text: known, rest, parts } = readUsSuffix(tail)
  const ownMark = rest === '' ? null : rest
  const meaning = 'registered industrial number; the figures have no meaning'
  return {
    scheme: 'us-industrial',
    standard: figures + known,
    stem: figures,
    ownMark,
    suffix,
    parts: [{ text: figures, meaning, source: 'us-industrial' }, ...parts, ...ownMarkParts(ownMark, 'US scheme')],
    remarks: [],
  }
}

function older(text: string): SchemeReading | null {
  const [, figures = '', letter = '', runOn, tail] = OLDER.exec(text) ?? []
  if (figures === '') return null
  const ownMark = [runOn, tail].filter(Boolean).join(' ') || null
  const meaning = 'number older than the US scheme, or a maker’s own: the figures have no meaning'
  return {
    scheme: 'us-older',
    standard: figures + letter,
    stem: figures + letter,
    ownMark,
    suffix: NO_SUFFIX,
    parts: [{ text: figures + letter, meaning, source: 'memory' }, ...ownMarkParts(ownMark, 'number')],
    remarks: [],
  }
}

const bare = (text: string): SchemeReading | null => receiving(text) ?? industrial(text) ?? older(text)

/** "UX-245": letters that run into a number are a maker's own; before two figures alone they may be a word and a year. */
function prefixed(text: string): SchemeReading | null {
  const [, letters = '', rest = ''] = PREFIXED.exec(text) ?? []
  const read = rest === '' ? null : bare(rest)
  if (!read || /^\d{2}$/.test(read.standard ?? '')) return null
  const ownMark = [letters, read.ownMark].filter(Boolean).join(' ')
  return { ...read, ownMark, parts: [...ownMarkParts(letters, 'scheme'), ...read.parts] }
}

export const readUsNumber = (text: string): SchemeReading | null => bare(text) ?? prefixed(text)
