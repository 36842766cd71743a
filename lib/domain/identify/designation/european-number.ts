/**
 * European type letters: heater letter, a letter for each system, figures of which the first is the base.
 * Special-quality issues carry the figures between the letters (E88CC).
 */
import { NO_SUFFIX, ownMarkParts, type Part, type Remark, type SchemeReading } from './designation-reading'

const PLAIN = /^(?<heater>[ACDEGKPU])(?<letters>[A-FHKLMYZ]{1,3})[\s-]*(?<figures>\d{2,3})(?!\d)(?<tail>.*)$/
const SPECIAL = /^(?<heater>[ACDEGKPU])[\s-]*(?<figures>\d{2,3})[\s-]*(?<letters>[A-FHKLMYZ]{1,3})(?<tail>.*)$/

const HEATERS: Readonly<Record<string, string>> = {
  A: '4 V heater',
  C: '200 mA heater, for a series chain',
  D: '0.5 to 1.5 V filament',
  E: '6.3 V heater',
  G: '5 V heater',
  K: '2 V heater or filament',
  P: '300 mA heater, for a series chain',
  U: '100 mA heater, for a series chain',
}

const SYSTEMS: Readonly<Record<string, string>> = {
  A: 'diode',
  B: 'double diode',
  C: 'triode',
  CC: 'twin triode',
  D: 'output triode',
  E: 'tetrode',
  F: 'pentode',
  H: 'hexode or heptode',
  K: 'octode',
  L: 'output pentode or tetrode',
  M: 'tuning indicator',
  Y: 'half-wave rectifier',
  Z: 'full-wave rectifier',
}

const BASES: Readonly<Record<string, string>> = {
  '2': 'B8G or B10B base',
  '3': 'octal base',
  '4': 'B8A base',
  '5': 'B9D or a base of its own',
  '8': 'noval (B9A) base',
  '9': '7-pin miniature (B7G) base',
}

const heaterPart = (letter: string): Part => ({ text: letter, meaning: HEATERS[letter] ?? '', source: 'european' })

const systemParts = (letters: string): Part[] =>
  (letters.match(/CC|./g) ?? []).map((text) => ({ text, meaning: SYSTEMS[text] ?? '', source: 'european' }))

function figureParts(figures: string): Part[] {
  const [base = '', rest] = [figures.slice(0, 1), figures.slice(1)]
  const meaning = BASES[base]
  return [
    { text: base, meaning: meaning ?? 'base not known here', source: meaning ? 'european' : 'memory' },
    { text: rest, meaning: 'serial figures', source: 'european' },
  ]
}

/** Only signal pentodes and tetrodes: F and E as the one system. */
function cutOffRemark(letters: string, figures: string): Remark[] {
  if (letters !== 'F' && letters !== 'E') return []
  const even = Number(figures) % 2 === 0
  return [
    {
      sentence: `An ${even ? 'even' : 'odd'} last figure of a signal pentode or tetrode usually is ${even ? 'sharp' : 'remote'} cut-off.`,
      source: 'practice',
    },
  ]
}

function markOf(tail: string): string | null {
  const mark = tail.replace(/^[\s\-–—.]+/, '')
  return mark === '' ? null : mark
}

const specialRemark = (heater: string, letters: string, figures: string): Remark => ({
  sentence: `Figures between the letters mark a special-quality issue. It need not equal ${heater}${letters}${figures}: its own sheet decides.`,
  source: 'special-european',
})

type Groups = Readonly<Record<string, string | undefined>>

function reading({ heater = '', letters = '', figures = '', tail = '' }: Groups, isSpecial: boolean): SchemeReading {
  const ownMark = markOf(tail)
  const stem = heater + (isSpecial ? figures + letters : letters + figures)
  const [systems, base] = [systemParts(letters), figureParts(figures)]
  return {
    ...{ scheme: 'european', standard: stem, stem, ownMark, suffix: NO_SUFFIX },
    parts: [
      heaterPart(heater),
      ...(isSpecial ? [...base, ...systems] : [...systems, ...base]),
      ...ownMarkParts(ownMark, 'European scheme'),
    ],
    remarks: isSpecial ? [specialRemark(heater, letters, figures)] : cutOffRemark(letters, figures),
  }
}

export function readEuropeanNumber(text: string): SchemeReading | null {
  const plain = PLAIN.exec(text)?.groups
  if (plain) return reading(plain, false)
  const special = SPECIAL.exec(text)?.groups
  return special ? reading(special, true) : null
}
