/**
 * Cyrillic type numbers ("6П6С"): volts, letters for the sort, serial figures, letter for the envelope.
 * All from memory. Letters that look alike in both alphabets are read as Cyrillic once one letter is.
 */
import { NO_SUFFIX, ownMarkParts, type Part, type SchemeReading } from './designation-reading'

const LOOKALIKES: Readonly<Record<string, string>> = {
  A: 'А',
  B: 'В',
  C: 'С',
  E: 'Е',
  H: 'Н',
  K: 'К',
  M: 'М',
  O: 'О',
  P: 'Р',
  T: 'Т',
  X: 'Х',
}

const NUMBER = /^(\d{1,2})([А-Я])(\d{1,2})([А-Я])?(.*)$/
const ANY = /[А-Я]/

const SORTS: Readonly<Record<string, string>> = {
  П: 'output pentode or beam tetrode',
  Н: 'double triode',
  Ж: 'pentode, sharp cut-off',
  К: 'pentode, remote cut-off',
  С: 'triode',
  Ц: 'rectifier',
  Ф: 'triode-pentode',
}

const ENVELOPES: Readonly<Record<string, string>> = {
  С: 'glass, octal or older base',
  П: 'miniature glass, 7 or 9 pins',
}

export const asCyrillic = (text: string): string =>
  ANY.test(text) ? [...text].map((letter) => LOOKALIKES[letter] ?? letter).join('') : text

export function readCyrillicNumber(text: string): SchemeReading | null {
  const [, volts = '', sort = '', figures = '', envelope = '', tail = ''] = NUMBER.exec(asCyrillic(text)) ?? []
  if (volts === '') return null
  const stem = volts + sort + figures + envelope
  const ownMark = tail === '' ? null : tail.replace(/^[\s-]+/, '')
  const letter = (text: string, known: Readonly<Record<string, string>>): Part => ({
    text,
    meaning: known[text] ?? 'not known here',
    source: 'memory',
  })
  return {
    scheme: 'cyrillic',
    standard: stem,
    stem,
    ownMark,
    suffix: NO_SUFFIX,
    parts: [
      { text: volts, meaning: 'heater or filament volts, rounded', source: 'memory' },
      letter(sort, SORTS),
      { text: figures, meaning: 'serial figures', source: 'memory' },
      ...(envelope ? [letter(envelope, ENVELOPES)] : []),
      ...ownMarkParts(ownMark, 'letters known here'),
    ],
    remarks: [],
  }
}
