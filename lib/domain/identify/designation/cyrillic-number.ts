/**
 * Cyrillic type numbers ("6П6С"): volts, a letter for the sort, serial figures, a letter for the envelope, and behind a
 * hyphen letters for the quality ("6П3С-Е"). All from memory. Letters that look alike in both alphabets are read as
 * Cyrillic once one letter is; a number all of whose letters look alike ("2А3") is a US one, unless the last letter is one of
 * the envelope.
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

const LATIN: Readonly<Record<string, string>> = Object.fromEntries(
  Object.entries(LOOKALIKES).map(([latin, cyrillic]) => [cyrillic, latin]),
)

const NUMBER = /^(\d{1,2})([А-Я])(\d{1,2})([А-Я])?(.*)$/
const ANY = /[А-Я]/

const SORTS: Readonly<Record<string, string>> = {
  А: 'frequency changer',
  Б: 'diode and pentode',
  Г: 'diode and triode',
  Д: 'diode',
  Е: 'tuning indicator',
  И: 'triode and hexode or heptode',
  П: 'output pentode or beam tetrode',
  Н: 'double triode',
  Ж: 'pentode, sharp cut-off',
  К: 'pentode, remote cut-off',
  С: 'triode',
  Ц: 'rectifier',
  Ф: 'triode-pentode',
  Х: 'double diode',
}

const QUALITIES: Readonly<Record<string, string>> = {
  В: 'more reliable and sturdier',
  Д: 'very long life',
  Е: 'long life',
  И: 'for pulses',
  К: 'against vibration',
}

const ENVELOPES: Readonly<Record<string, string>> = {
  С: 'glass, octal or older base',
  П: 'miniature glass, 7 or 9 pins',
}

/** "6АС7" typed with Cyrillic letters is 6AC7: nothing in it needs them. */
export function asLatin(text: string): string {
  const latin = [...text].map((letter) => LATIN[letter] ?? letter).join('')
  return ANY.test(latin) || /^\d{1,2}[А-Я]\d{1,2}[СП]/.test(asCyrillic(text)) ? text : latin
}

export const asCyrillic = (text: string): string =>
  ANY.test(text) ? [...text].map((letter) => LOOKALIKES[letter] ?? letter).join('') : text

function qualityParts(ownMark: string | null): Part[] {
  const letters = [...(ownMark ?? '')]
  const known = letters.length > 0 && letters.every((letter) => QUALITIES[letter])
  if (!known) return ownMarkParts(ownMark, 'letters known here')
  return letters.map((text) => ({ text, meaning: `quality: ${QUALITIES[text]}`, source: 'memory' }))
}

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
      ...qualityParts(ownMark),
    ],
    remarks: [],
  }
}
