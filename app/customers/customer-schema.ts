import * as z from 'zod/mini'
import { choice, email, text, version } from '@/app/_components/form/fields'
import { type FormValues, sheetValues } from '@/app/_components/form/form-state'
import { CONTACT_WAYS, type Customer } from '@/lib/domain/customer/customer'

export const customerFields = {
  name: text({ label: 'Name', required: true, max: 120 }),
  phone: text({ label: 'Phone', max: 60 }),
  email: email({ label: 'E-mail' }),
  address: text({ label: 'Postal address', max: 400 }),
  preferredContact: choice('Preferred contact', CONTACT_WAYS),
  note: text({ label: 'Note', max: 1000 }),
}

export const customerSchema = z.object({ id: text({ label: 'Customer' }), version: version(), ...customerFields })

export function customerValues(customer: Customer | null): FormValues {
  if (!customer)
    return { id: '', version: '0', name: '', phone: '', email: '', address: '', preferredContact: 'phone', note: '' }
  const { id, version: saved, name, phone, email: mail, address, preferredContact, note } = customer
  return sheetValues({ id, version: String(saved), name, phone, email: mail, address, preferredContact, note })
}
