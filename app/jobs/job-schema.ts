/** A job's own entries, at the counter and when they are corrected later. */
import * as z from 'zod/mini'
import { flatRows } from '@/app/_components/form/edit-rows'
import { amount, day, flag, requiredMeasure, rows, text, version } from '@/app/_components/form/fields'
import { type FormValues, sheetValues } from '@/app/_components/form/form-state'
import type { Job } from '@/lib/domain/job/job'
import { exactDecimal, minorDigits } from '@/lib/domain/money'

const itemSchema = z.object({
  count: requiredMeasure({ label: 'Count', unit: '', min: 1, max: 99, whole: true }),
  label: text({ label: 'Item', required: true, max: 120 }),
})

export const jobFields = (currency: string) => ({
  fault: text({ label: "Fault in the customer's words", required: true, max: 2000 }),
  faultSettings: text({ label: 'Settings that show it', max: 400 }),
  spendingLimit: amount({ label: 'Spending limit', currency, digits: minorDigits(currency) }),
  promisedOn: day({ label: 'Promised' }),
  oldPartsBack: flag(),
  items: rows(itemSchema),
})

export const jobSchema = (currency: string) =>
  z.object({ number: text({ label: 'Job' }), version: version(), ...jobFields(currency) })

export const BLANK_ITEM = { count: '1', label: '' }

export function jobValues(job: Job, currency: string): FormValues {
  const { number, version: saved, fault, faultSettings, spendingLimit, promisedOn, oldPartsBack, items } = job
  return sheetValues({
    number,
    version: String(saved),
    fault,
    faultSettings,
    spendingLimit: spendingLimit === null ? '' : exactDecimal(spendingLimit, minorDigits(currency)),
    promisedOn: promisedOn ?? '',
    ...(oldPartsBack ? { oldPartsBack: 'on' } : {}),
    ...flatRows(
      'items',
      items.map(({ count, label }) => ({ count: String(count), label })),
    ),
  })
}

export const newJobValues = (): FormValues => ({
  fault: '',
  faultSettings: '',
  spendingLimit: '',
  promisedOn: '',
})
