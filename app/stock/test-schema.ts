import type * as z from 'zod/mini'
import { choice, day, measure, text } from '@/app/_components/form/fields'
import type { FormValues } from '@/app/_components/form/form-state'
import type { Day } from '@/lib/domain/calendar'
import type { TestEntry } from '@/lib/domain/stock/test-entry'
import type { SectionReading } from '@/lib/domain/stock/tube'
import { fieldLabel } from '@/lib/domain/stock/tube-fault'
import { amps, siemens, volts } from '@/lib/domain/units'
import { type WordSet, wordsFor } from '@/lib/domain/words'

const MILLI = 0.001

/** Bounds of what a bench tester sets and shows. The grid is against cathode, so never above zero. */
export function settingFields(set: WordSet) {
  const words = wordsFor(set)
  const voltage = (field: 'plateVolts' | 'screenVolts', max: number) =>
    measure({ label: fieldLabel(field, words), unit: 'V', min: 0, max, above: true })
  return {
    day: day({ label: fieldLabel('day', words) }),
    instrumentName: text({ label: fieldLabel('instrumentName', words), max: 80 }),
    plateVolts: voltage('plateVolts', 1500),
    screenVolts: voltage('screenVolts', 1000),
    gridVolts: measure({ label: fieldLabel('gridVolts', words), unit: 'V', min: -300, max: 0 }),
    leakage: text({ label: 'Heater to cathode', max: 120 }),
    gas: text({ label: 'Gas', max: 120 }),
    noise: text({ label: 'Noise', max: 120 }),
    microphony: text({ label: 'Microphony', max: 120 }),
    testNote: text({ label: 'Note on the test', max: 500 }),
  }
}

export function readingFields(set: WordSet) {
  const words = wordsFor(set)
  const current = (field: 'plateMilliamps' | 'secondPlateMilliamps' | 'screenMilliamps', max: number) =>
    measure({ label: fieldLabel(field, words), unit: 'mA', min: 0, max, scale: MILLI })
  const gm = (field: 'gm' | 'secondGm') =>
    measure({ label: fieldLabel(field, words), unit: 'mA/V', min: 0, max: 60, scale: MILLI })
  return {
    plateMilliamps: current('plateMilliamps', 1000),
    gm: gm('gm'),
    secondPlateMilliamps: current('secondPlateMilliamps', 1000),
    secondGm: gm('secondGm'),
    screenMilliamps: current('screenMilliamps', 200),
  }
}

export const SHORTS = ['none', 'found'] as const

export const testFields = (set: WordSet) => ({
  ...settingFields(set),
  ...readingFields(set),
  shorts: choice('Shorts', SHORTS),
})

type Parsed<Fields> = {
  readonly [Key in keyof Fields]: Fields[Key] extends z.ZodMiniType ? z.output<Fields[Key]> : never
}
type ParsedSetting = Parsed<ReturnType<typeof settingFields>>
type ParsedReadings = Parsed<ReturnType<typeof readingFields>>

const known = <T>(value: number | null, unit: (value: number) => T): T | null => (value === null ? null : unit(value))

export function settingOf(typed: ParsedSetting): Omit<TestEntry, 'sections' | 'shorts'> {
  const { day, instrumentName, leakage, gas, noise, microphony, testNote } = typed
  return {
    ...{ day, instrumentName, leakage, gas, noise, microphony },
    note: testNote,
    plateVoltage: known(typed.plateVolts, volts),
    screenVoltage: known(typed.screenVolts, volts),
    gridVoltage: known(typed.gridVolts, volts),
  }
}

/** The second section is there only when something was read on it. */
export function sectionsOf(typed: ParsedReadings): SectionReading[] {
  const first: SectionReading = {
    section: 1,
    plateCurrent: known(typed.plateMilliamps, amps),
    screenCurrent: known(typed.screenMilliamps, amps),
    transconductance: known(typed.gm, siemens),
  }
  if (typed.secondPlateMilliamps === null && typed.secondGm === null) return [first]
  const second: SectionReading = {
    section: 2,
    plateCurrent: known(typed.secondPlateMilliamps, amps),
    screenCurrent: null,
    transconductance: known(typed.secondGm, siemens),
  }
  return [first, second]
}

type ParsedTest = ParsedSetting & ParsedReadings & { readonly shorts: (typeof SHORTS)[number] }

export const testEntryOf = (typed: ParsedTest): TestEntry => ({
  ...settingOf(typed),
  sections: sectionsOf(typed),
  shorts: typed.shorts === 'found',
})

export type SettingStart = { readonly today: Day; readonly instrument: string }

export const blankSetting = ({ today, instrument }: SettingStart): FormValues => ({
  day: today,
  instrumentName: instrument,
  plateVolts: '',
  screenVolts: '',
  gridVolts: '',
  leakage: '',
  gas: '',
  noise: '',
  microphony: '',
  testNote: '',
})

export const blankTest = (start: SettingStart): FormValues => ({
  ...blankSetting(start),
  shorts: 'none',
  plateMilliamps: '',
  gm: '',
  secondPlateMilliamps: '',
  secondGm: '',
  screenMilliamps: '',
})
