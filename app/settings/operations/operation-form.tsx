'use client'
import {
  CheckField,
  FormMessage,
  HiddenField,
  type Option,
  SelectField,
  SubmitButton,
  TextField,
} from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { submitOperation } from './actions'
import { operationSchema } from './operation-schema'

const CHARGED: readonly Option[] = [
  { value: 'hours', text: 'by the hour, at the hourly rate' },
  { value: 'flat', text: 'at a flat price' },
]

export function OperationForm({ values, currency }: { values: FormValues; currency: string }) {
  const form = useActionForm(submitOperation, freshForm(values), operationSchema(currency))
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      <HiddenField form={form} name="id" />
      <TextField form={form} name="name" label="Name" hint="As it stands on a quote." />
      <div className="fields">
        <SelectField form={form} name="charged" label="Charged" options={CHARGED} />
        <TextField
          form={form}
          name="milliHours"
          label="Hours"
          unit="h"
          numeric
          hint="When charged by the hour: 0.75 is three quarters."
        />
        <TextField
          form={form}
          name="flatPrice"
          label="Flat price"
          unit={currency}
          numeric
          hint="When charged at a flat price, before tax."
        />
      </div>
      {form.valueOf('id') !== '' && (
        <CheckField
          form={form}
          name="retired"
          label="Retired"
          hint="No longer offered for new quotes. Quotes that name it stay as they are."
        />
      )}
      <div className="row">
        <SubmitButton form={form}>Save operation</SubmitButton>
      </div>
    </form>
  )
}
