import * as z from 'zod/mini'
import { amount, choice, requiredAmount, text } from '@/app/_components/form/fields'
import type { FormValues } from '@/app/_components/form/form-state'
import { TUBE_CONDITIONS } from '@/lib/domain/stock/tube'
import { volts } from '@/lib/domain/units'
import type { NewTestSheet } from '@/lib/workflow/stock/start-test-sheet'
import { type SettingStart, settingFields } from '../test-schema'
import type { StockKit } from '../tube-schema'

export const SECTIONS = ['1', '2'] as const

export function startSheetSchema(kit: StockKit) {
  const { day, instrumentName, plateVolts, screenVolts, gridVolts } = settingFields(kit.words)
  const { currency, digits } = kit
  return z.object({
    designation: text({ label: 'Type', required: true, max: 40 }),
    ...{ day, instrumentName, plateVolts, screenVolts, gridVolts },
    sections: choice('Sections', SECTIONS),
    condition: choice('Condition of new ones', TUBE_CONDITIONS),
    location: text({ label: 'Location of new ones', max: 60 }),
    price: requiredAmount({ label: 'Price of new ones', currency, digits }),
    cost: amount({ label: 'Paid for new ones', currency, digits }),
  })
}

const known = (value: number | null) => (value === null ? null : volts(value))

export function newSheetOf(typed: z.output<ReturnType<typeof startSheetSchema>>): NewTestSheet {
  const { plateVolts, screenVolts, gridVolts, sections, ...rest } = typed
  return {
    ...rest,
    sections: sections === '2' ? 2 : 1,
    plateVoltage: known(plateVolts),
    screenVoltage: known(screenVolts),
    gridVoltage: known(gridVolts),
  }
}

export const startSheetValues = ({ today, instrument }: SettingStart): FormValues => ({
  ...{ designation: '', day: today, instrumentName: instrument, plateVolts: '', screenVolts: '', gridVolts: '' },
  ...{ sections: '1', condition: 'used-tested', location: '', price: '0', cost: '' },
})
