'use client'
import { CheckField, SheetHead, SubmitButton, TextField } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { submitLabelSheet } from './actions'
import { labelSheetSchema, SIZES } from './label-sheet-schema'

export function LabelSheetForm({ values }: { values: FormValues }) {
  const form = useActionForm(submitLabelSheet, freshForm(values), labelSheetSchema)
  return (
    <form {...form.formProps} className="panel stack">
      <SheetHead form={form} />
      <TextField form={form} name="name" label="Name" hint="What you call it when printing." />
      <div className="fields">
        {SIZES.map(([name, label, unit]) => (
          <TextField key={name} form={form} name={name} label={label} unit={unit || undefined} numeric />
        ))}
      </div>
      {values.id && <CheckField form={form} name="retired" label="Retired: not offered any more" />}
      <div className="row">
        <SubmitButton form={form}>Save the sizes</SubmitButton>
      </div>
    </form>
  )
}
