'use client'
import { FormMessage, HiddenField, SubmitButton, TextField } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { submitMaker } from './actions'
import { makerSchema } from './maker-schema'

export function MakerForm({ values }: { values: FormValues }) {
  const form = useActionForm(submitMaker, freshForm(values), makerSchema)
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      {['id', 'version', 'base'].map((name) => (
        <HiddenField key={name} form={form} name={name} />
      ))}
      <div className="fields">
        <TextField form={form} name="name" label="Name" />
        <TextField
          form={form}
          name="sourceCodes"
          label="Source codes"
          hint="Three figures before the date code; several with commas."
        />
        <TextField form={form} name="janLetters" label="JAN letters" hint="Behind JAN on military stock." />
        <TextField form={form} name="factoryMarks" label="Factory marks" hint="Letter or sign of an etched code." />
        <div className="wide">
          <TextField form={form} name="note" label="Note" lines={2} hint="Where you have it from." />
        </div>
      </div>
      <div className="row">
        <SubmitButton form={form}>Save maker</SubmitButton>
      </div>
    </form>
  )
}
