'use client'
import * as z from 'zod/mini'
import { FormMessage, HiddenField, SubmitButton } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { type FormAction, useActionForm } from '@/app/_components/form/use-action-form'

const schema = z.object({})

/** `values` name the set and the limits it was found under; the server looks again before it takes it. */
type Props = { readonly action: FormAction; readonly values: FormValues; readonly label?: string }

export function ChooseForm({ action, values, label = 'Put this set on the quote' }: Props) {
  const form = useActionForm(action, freshForm(values), schema)
  return (
    <form {...form.formProps} className="stack no-print">
      <FormMessage form={form} />
      {Object.keys(values).map((name) => (
        <HiddenField key={name} form={form} name={name} />
      ))}
      <div className="row">
        <SubmitButton form={form}>{label}</SubmitButton>
      </div>
    </form>
  )
}
