/** What may be typed when an amplifier goes back and money changes hands. */
import * as z from 'zod/mini'
import { choice, flag, optionalChoice, requiredAmount, text } from '@/app/_components/form/fields'
import { PAYMENT_WAYS } from '@/lib/domain/job/account'
import { minorDigits } from '@/lib/domain/money'

export const WHO_COLLECTS = ['owner', 'someone else'] as const

export const paymentSchema = (currency: string) =>
  z.object({
    amount: requiredAmount({ label: 'Amount', currency, digits: minorDigits(currency), min: 1 }),
    how: choice('Paid by', PAYMENT_WAYS),
  })

const collector = {
  who: choice('Who collects', WHO_COLLECTS),
  name: text({ label: 'Name', required: true }),
  identity: text({ label: 'Identity shown', max: 200 }),
  itemsNote: text({ label: 'Items that stay here', max: 300 }),
  owesNote: text({ label: 'Agreed about the balance', max: 300 }),
}

export const handOverSchema = z.object(collector)

export const returnSchema = (currency: string) =>
  z.object({
    ...collector,
    reason: text({ label: 'Why it goes back unrepaired', max: 500, required: true }),
    charge: requiredAmount({ label: 'Charged in all', currency, digits: minorDigits(currency) }),
    how: optionalChoice('Settled now by', PAYMENT_WAYS),
    partsBack: flag(),
  })

export const takeBackSchema = z.object({
  reason: text({ label: 'Why it is taken back', max: 300, required: true }),
})
