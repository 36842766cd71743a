/**
 * Numbers that the services gave: Common Valve (CV) and its NATO stock form, M8000, Signal Corps VT,
 * and the British ones before CV. The figures of all of them have no meaning of their own.
 */
import { NO_SUFFIX, type Part, type Remark, type SchemeReading } from './designation-reading'

const COMMON_VALVE = /^CV[\s-]*(\d{1,5})(?!\d)(.*)$/
const NATO = /^59\d{2}[\s-]?99[\s-]?\d{3}[\s-]?(\d{4})$/
const SPECIAL_M = /^M[\s-]?(8\d{3})(?!\d)(.*)$/
const VT = /^VT([\s-]*)(\d{1,3})[\s-]*([A-Z]?)\s*(\(?RAF\)?|\(?ARMY\)?)?$/
const BRITISH_SERVICE = /^(ARTH|ARTP|ARP|AR|ATP|AT|VR|VU|VS|VW|NR|NT|NU)[\s-]*(\d{1,3}[A-Z]?)$/

type Outline = Pick<SchemeReading, 'scheme' | 'standard' | 'parts'> & {
  readonly ownMark?: string | null
  readonly remarks?: readonly Remark[]
}

const reading = ({ ownMark = null, remarks = [], ...outline }: Outline): SchemeReading => ({
  ...outline,
  stem: outline.standard,
  ownMark,
  remarks,
  suffix: NO_SUFFIX,
})

const isSpecialQuality = (figures: string): boolean => figures.length === 4 && figures.startsWith('4')

function commonValveParts(text: string, figures: string): Part[] {
  const common: Part = {
    text,
    meaning: 'Common Valve number of the British services; the figures have no meaning',
    source: 'british',
  }
  const special: Part = { text: figures, meaning: 'CV4000 to CV4999: special-quality issue', source: 'memory' }
  return isSpecialQuality(figures) ? [common, special] : [common]
}

function commonValve(text: string): SchemeReading | null {
  const [, written = '', tail = ''] = COMMON_VALVE.exec(text) ?? []
  const figures = written.replace(/^0+(?=\d)/, '')
  if (figures === '') return null
  const mark = tail.replace(/^[\s\-–—./]+/, '')
  const ownMark = mark === '' ? null : mark
  const inspection: Part[] = ownMark ? [{ text: ownMark, meaning: 'inspection or maker mark', source: 'memory' }] : []
  return reading({
    scheme: 'common-valve',
    standard: `CV${figures}`,
    ownMark,
    parts: [...commonValveParts(`CV${figures}`, figures), ...inspection],
  })
}

function natoForm(text: string): SchemeReading | null {
  const written = NATO.exec(text)?.[1]
  if (!written) return null
  const figures = written.replace(/^0+/, '')
  if (figures === '') return null
  const stock: Part = {
    text,
    meaning: `NATO stock form (tubes, United Kingdom) of CV${figures}: the last four figures`,
    source: 'memory',
  }
  return reading({
    scheme: 'common-valve',
    standard: `CV${figures}`,
    parts: [stock, ...commonValveParts(`CV${figures}`, figures)],
  })
}

function specialM(text: string): SchemeReading | null {
  const [, figures = '', tail = ''] = SPECIAL_M.exec(text) ?? []
  if (figures === '') return null
  const ownMark = tail.trim() === '' ? null : tail.trim()
  const meaning = 'M8000 series: special-quality issue; the figures have no meaning'
  return reading({
    scheme: 'special-quality-m',
    standard: `M${figures}`,
    ownMark,
    parts: [{ text: `M${figures}`, meaning, source: 'memory' }],
  })
}

const TWO_VT: Remark = {
  sentence:
    'VT stands in two lists: the US Signal Corps’ and, before CV, the Royal Air Force’s (valve, transmitting). The same figure is not the same tube: VT75 of the RAF is the KT66.',
  source: 'british',
}

function royalAirForce(figures: string, letter: string): SchemeReading {
  const text = `VT${figures}${letter}`
  const meaning = 'Royal Air Force number before CV: valve, transmitting'
  return reading({
    scheme: 'british-service',
    standard: `${text} (RAF)`,
    parts: [{ text, meaning, source: 'british' }],
  })
}

function signalCorps(text: string): SchemeReading | null {
  const [, , figures = '', letter = '', service] = VT.exec(text) ?? []
  if (figures === '') return null
  if (service?.includes('RAF')) return royalAirForce(figures, letter)
  const number: Part = {
    text: `VT-${figures}`,
    meaning: 'US Army Signal Corps number, superseded by JAN about 1943',
    source: 'memory',
  }
  const version: Part = { text: letter, meaning: 'letter of the envelope version, after the list', source: 'memory' }
  return reading({
    scheme: 'service-vt',
    standard: `VT-${figures}${letter}`,
    parts: letter ? [number, version] : [number],
    remarks: [TWO_VT],
  })
}

function britishService(text: string): SchemeReading | null {
  const [, letters = '', figures = ''] = BRITISH_SERVICE.exec(text) ?? []
  if (letters === '') return null
  const whose = letters.startsWith('A') ? 'Army' : letters.startsWith('N') ? 'Navy' : 'Royal Air Force'
  const meaning = `British ${whose} number before CV`
  return reading({
    scheme: 'british-service',
    standard: letters + figures,
    parts: [{ text: letters + figures, meaning, source: 'british' }],
  })
}

export const readServiceNumber = (text: string): SchemeReading | null =>
  commonValve(text) ?? natoForm(text) ?? specialM(text) ?? signalCorps(text) ?? britishService(text)
