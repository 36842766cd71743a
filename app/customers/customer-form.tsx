'use client'
import { SelectField, SheetHead, SubmitButton, TextField } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { type ActionForm, useActionForm } from '@/app/_components/form/use-action-form'
import { CONTACT_WAYS } from '@/lib/domain/customer/customer'
import { submitCustomer } from './actions'
import { customerSchema } from './customer-schema'

const CONTACT_OPTIONS = CONTACT_WAYS.map((way) => ({ value: way, text: way }))

export function CustomerForm({ values }: { values: FormValues }) {
  const form = useActionForm(submitCustomer, freshForm(values), customerSchema)
  return (
    <form {...form.formProps} className="stack">
      <SheetHead form={form} />
      <CustomerFields form={form} />
      <div className="row">
        <SubmitButton form={form}>Save customer</SubmitButton>
      </div>
    </form>
  )
}

/** Also used at the counter, where the customer is part of the job's form. */
export function CustomerFields({ form, prefix = '' }: { form: ActionForm; prefix?: string }) {
  return (
    <div className="fields">
      <TextField form={form} name={`${prefix}name`} label="Name" />
      <TextField form={form} name={`${prefix}phone`} label="Phone" type="tel" />
      <TextField form={form} name={`${prefix}email`} label="E-mail" type="email" />
      <SelectField form={form} name={`${prefix}preferredContact`} label="Preferred contact" options={CONTACT_OPTIONS} />
      <div className="wide">
        <TextField form={form} name={`${prefix}address`} label="Postal address" lines={2} />
      </div>
      <div className="wide">
        <TextField form={form} name={`${prefix}note`} label="Note" lines={2} />
      </div>
    </div>
  )
}
