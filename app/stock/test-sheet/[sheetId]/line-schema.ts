import * as z from 'zod/mini'
import { after, flag, refuseAt, text } from '@/app/_components/form/fields'
import type { FormValues } from '@/app/_components/form/form-state'
import { readValues } from '@/app/_components/form/read-form'
import type { SheetLine } from '@/lib/domain/stock/sheet/test-sheet'
import type { SectionReading } from '@/lib/domain/stock/tube'
import type { WordSet } from '@/lib/domain/words'
import { readingFields } from '../../test-schema'

/** Typed where a current is asked for, it says that a short was found and nothing was read. */
const SHORT = /^s(hort)?s?$/i

export const saysShort = (typed: string): boolean => SHORT.test(typed.trim())

const READINGS = ['plateMilliamps', 'gm', 'secondPlateMilliamps', 'secondGm', 'screenMilliamps'] as const

const lineFields = (words: WordSet) => ({
  sheetId: text({ label: 'Sheet' }),
  corrects: text({ label: 'Line' }),
  /** The unknown mark that was asked about: sent again unchanged, it is meant. */
  offered: text({ label: 'Mark' }),
  mark: text({ label: 'Mark', max: 40 }),
  takeIn: flag(),
  shorts: flag(),
  ...readingFields(words),
  leakage: text({ label: 'Heater to cathode', max: 120 }),
  gas: text({ label: 'Gas', max: 120 }),
  noise: text({ label: 'Noise', max: 120 }),
  microphony: text({ label: 'Microphony', max: 120 }),
  testNote: text({ label: 'Note on the test', max: 500 }),
})

/** An "s" for a current is the tick for a short. */
export function withShort(values: FormValues): FormValues {
  if (!saysShort(values.plateMilliamps ?? '')) return values
  return { ...values, shorts: 'on', plateMilliamps: '' }
}

export const lineSchema = (words: WordSet) => {
  const whole = z.object(lineFields(words))
  return after(z.looseObject({}), (typed, context): z.output<typeof whole> => {
    const read = readValues(whole, withShort(typed as FormValues))
    if (read.ok) return read.value
    for (const [name, message] of Object.entries(read.faults)) refuseAt(context, message, [name])
    return z.NEVER
  })
}

/** Nothing but a mark was sent, as a scanner does that ends with Enter. */
export const isMarkOnly = (values: FormValues): boolean =>
  (values.mark ?? '').trim() !== '' &&
  values.shorts !== 'on' &&
  READINGS.every((name) => (values[name] ?? '').trim() === '')

const BLANK: FormValues = {
  ...{ corrects: '', offered: '', mark: '', shorts: '', leakage: '', gas: '', noise: '', microphony: '', testNote: '' },
  ...Object.fromEntries(READINGS.map((name) => [name, ''])),
}

export const blankLine = (sheetId: string, takeIn: string): FormValues => ({ ...BLANK, sheetId, takeIn })

const milli = (value: number | null | undefined): string =>
  value === null || value === undefined ? '' : String(Number((value * 1000).toPrecision(9)))

/** An earlier line in the boxes, to be put right. */
export function lineValues(sheetId: string, { mark, test }: SheetLine): FormValues {
  const section = (number: 1 | 2): Partial<SectionReading> =>
    test.sections.find((each) => each.section === number) ?? {}
  const [first, second] = [section(1), section(2)]
  return {
    ...blankLine(sheetId, ''),
    ...{ corrects: test.id, mark, shorts: test.shorts ? 'on' : '' },
    ...{ plateMilliamps: milli(first.plateCurrent), gm: milli(first.transconductance) },
    ...{ secondPlateMilliamps: milli(second.plateCurrent), secondGm: milli(second.transconductance) },
    screenMilliamps: milli(first.screenCurrent),
    ...{
      leakage: test.leakage,
      gas: test.gas,
      noise: test.noise,
      microphony: test.microphony ?? '',
      testNote: test.note,
    },
  }
}
