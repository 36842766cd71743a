/** What the sharing is asked: limits in boxes, and a tick for every job. */
import * as z from 'zod/mini'
import { amount, flag, measure, requiredMeasure } from '@/app/_components/form/fields'
import type { FormValues } from '@/app/_components/form/form-state'
import { minorDigits } from '@/lib/domain/money'
import type { Words } from '@/lib/domain/words'

export const shareSchema = (currency: string, { plate }: Words) =>
  z.object({
    age: measure({ label: 'Test not older than', unit: 'days', min: 0, max: 36500, whole: true }),
    milliamps: requiredMeasure({
      label: `Difference in ${plate} current`,
      unit: 'mA',
      min: 0.1,
      max: 50,
      scale: 0.001,
    }),
    percent: requiredMeasure({ label: 'Difference in transconductance', unit: '%', min: 0.5, max: 100, scale: 0.01 }),
    cap: amount({ label: 'Price of a set at most', currency, digits: minorDigits(currency) }),
    over: flag(),
    one: flag(),
  })

const TICK = 'job.'

export const tickName = (jobNumber: string): string => `${TICK}${jobNumber}`

export const ticked = (values: FormValues): ReadonlySet<string> =>
  new Set(Object.keys(values).flatMap((name) => (name.startsWith(TICK) ? [name.slice(TICK.length)] : [])))
