/** Figures of a stocked tube and its tests in words: for lists, sheets and the history. */
import type { Shown } from '../history/changes'
import { shown } from '../history/changes'
import type { Money } from '../money'
import type { Amps, Siemens, Volts } from '../units'
import { capital, type Words } from '../words'
import { noiseText } from './microphony'
import { conditionWord, type SectionReading, type TestSetting, type TubeDetails, type TubeTestFacts } from './tube'

/** As many decimals as it takes, at most three; a typographic minus. */
function figure(value: number): string {
  const text = value.toFixed(3).replace(/\.?0+$/, '')
  return text === '-0' ? '0' : text.replace('-', '\u2212')
}

export const voltsText = (value: Volts): string => `${figure(value)} V`
export const milliampsText = (value: Amps): string => `${figure(value * 1e3)} mA`
export const gmText = (value: Siemens): string => `${figure(value * 1e3)} mA/V`

/** "250 / 250 / −14 V": plate, screen, grid, as far as they were set. */
export function settingText({ plateVoltage, screenVoltage, gridVoltage }: TestSetting): string {
  const set = [plateVoltage, screenVoltage, gridVoltage].filter((voltage) => voltage !== null)
  return set.length === 0 ? '' : `${set.map(figure).join(' / ')} V`
}

type Read<T> = (reading: SectionReading) => T | null

/** "1.2 mA", of a twin "1.2 and 1.1 mA"; a dash was not read. */
function bySection<T extends number>(sections: readonly SectionReading[], read: Read<T>, unit: string): string {
  const values = sections.map(read)
  if (values.every((value) => value === null)) return ''
  return `${values.map((value) => (value === null ? '–' : figure(value * 1e3))).join(' and ')} ${unit}`
}

export const plateCurrentText = (sections: readonly SectionReading[]): string =>
  bySection(sections, ({ plateCurrent }) => plateCurrent, 'mA')

export const screenCurrentText = (sections: readonly SectionReading[]): string =>
  bySection(sections.slice(0, 1), ({ screenCurrent }) => screenCurrent, 'mA')

export const transconductanceText = (sections: readonly SectionReading[]): string =>
  bySection(sections, ({ transconductance }) => transconductance, 'mA/V')

export function tubeShown(details: TubeDetails, formatMoney: (amount: Money) => string): Shown {
  return shown([
    ['Mark', details.mark],
    ['Type', details.designation],
    ['Condition', conditionWord(details.condition)],
    ['Acquired', details.acquired],
    ['Construction', details.construction],
    ['Location', details.location],
    ['Cost', details.cost === null ? '' : formatMoney(details.cost)],
    ['Price', formatMoney(details.price)],
  ])
}

/** `testedOn` as the reader writes days. */
export function testShown(test: TubeTestFacts, testedOn: string, words: Words): Shown {
  const plate = capital(words.plate)
  return shown([
    ['Tested on', testedOn],
    ['Instrument', test.instrumentName],
    ['Test point', settingText(test)],
    ['Shorts', test.shorts ? 'found' : 'none'],
    [`${plate} current`, plateCurrentText(test.sections)],
    ['Screen current', screenCurrentText(test.sections)],
    ['Transconductance', transconductanceText(test.sections)],
    ['Heater to cathode', test.leakage],
    ['Gas', test.gas],
    ['Noise', noiseText(test)],
    ['Microphony', test.microphony ?? ''],
    ['Note', test.note],
  ])
}
