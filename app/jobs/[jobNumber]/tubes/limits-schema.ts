/** Limits of the choice, kept in the address so that they can be gone back to. */
import * as z from 'zod/mini'
import { amount, flag, measure } from '@/app/_components/form/fields'
import { minorDigits } from '@/lib/domain/money'

export const limitsSchema = (currency: string) =>
  z.object({
    age: measure({ label: 'Test not older than', unit: 'days', min: 0, max: 36500, whole: true }),
    cap: amount({ label: 'Price of the set at most', currency, digits: minorDigits(currency) }),
    over: flag(),
    one: flag(),
  })
