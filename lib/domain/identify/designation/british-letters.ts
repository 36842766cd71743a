/**
 * The British letter-and-number scheme of the KT series: letters for the sort of valve, serial figures.
 * KT and U were read in pages, the other letters are from memory.
 */
import { NO_SUFFIX, ownMarkParts, type Part, type SchemeReading } from './designation-reading'

const NUMBER = /^(KT|LN|DH|[BDLNUXZ])[\s-]*(\d{2,3})(?!\d)(.*)$/

const LETTERS: Readonly<Record<string, readonly [meaning: string, source: Part['source']]>> = {
  KT: ['kinkless tetrode: a beam tetrode', 'british'],
  U: ['rectifier', 'memory'],
  L: ['low-mu triode', 'memory'],
  B: ['double triode', 'memory'],
  Z: ['pentode for radio or audio frequencies', 'memory'],
  N: ['output pentode', 'memory'],
  LN: ['triode and output pentode', 'memory'],
  X: ['frequency changer', 'memory'],
  D: ['diode', 'memory'],
  DH: ['diode and triode', 'memory'],
}

export function readBritishLetters(text: string): SchemeReading | null {
  const [, letters = '', figures = '', tail = ''] = NUMBER.exec(text) ?? []
  if (letters === '') return null
  const [meaning, source] = LETTERS[letters] ?? ['not known here', 'memory']
  const mark = tail.replace(/^[\s\-–—.]+/, '')
  const ownMark = mark === '' ? null : mark
  return {
    scheme: 'british-letters',
    standard: letters + figures,
    stem: letters + figures,
    ownMark,
    suffix: NO_SUFFIX,
    parts: [
      { text: letters, meaning, source },
      { text: figures, meaning: 'serial figures', source: 'memory' },
      ...ownMarkParts(ownMark, 'scheme'),
    ],
    remarks: [],
  }
}
