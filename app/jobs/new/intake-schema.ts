import * as z from 'zod/mini'
import { text } from '@/app/_components/form/fields'
import type { FormValues } from '@/app/_components/form/form-state'
import { ampFields, newAmpValues } from '@/app/amps/amp-schema'
import { customerFields, customerValues } from '@/app/customers/customer-schema'
import { jobFields, newJobValues } from '../job-schema'

/** Which parts the form asks for: what is known already is not typed again. */
export type IntakeShape = { readonly newCustomer: boolean; readonly newAmp: boolean; readonly currency: string }

export const intakeSchema = ({ newCustomer, newAmp, currency }: IntakeShape) =>
  z.object({
    customerId: text({ label: 'Customer' }),
    ampId: text({ label: 'Amplifier' }),
    customer: newCustomer ? z.optional(z.object(customerFields)) : z.optional(z.undefined()),
    amp: newAmp ? z.optional(z.object(ampFields)) : z.optional(z.undefined()),
    ...jobFields(currency),
  })

const prefixed = (prefix: string, values: FormValues, names: readonly string[]): FormValues =>
  Object.fromEntries(names.map((name) => [`${prefix}.${name}`, values[name] ?? '']))

export type IntakeStart = {
  readonly customerId: string
  readonly ampId: string
  /** What was typed into the search: it becomes the name, phone, e-mail or serial of somebody new. */
  readonly typed: string
  readonly mainsVolts: number
}

export function intakeValues({ customerId, ampId, typed, mainsVolts }: IntakeStart): FormValues {
  const isMail = typed.includes('@')
  const isPhone = /^[\d\s()+./-]{5,}$/.test(typed)
  const customer = { ...customerValues(null), [isMail ? 'email' : isPhone ? 'phone' : 'name']: typed }
  return {
    customerId,
    ampId,
    ...(customerId === '' ? prefixed('customer', customer, Object.keys(customerFields)) : {}),
    ...(ampId === '' ? prefixed('amp', newAmpValues('', mainsVolts), Object.keys(ampFields)) : {}),
    ...newJobValues(),
  }
}
