'use client'
/** One button that does one thing and may be refused: the sentence stands above it. */
import * as z from 'zod/mini'
import { FormMessage, HiddenField, SubmitButton } from './form-fields'
import { freshForm } from './form-state'
import { type FormAction, type FormValues, useActionForm } from './use-action-form'

const schema = z.object({})
const NOTHING: FormValues = {}

type Props = {
  readonly action: FormAction
  readonly values?: FormValues
  readonly quiet?: boolean
  readonly children: React.ReactNode
}

export function ActForm({ action, values = NOTHING, quiet, children }: Props) {
  const form = useActionForm(action, freshForm(values), schema)
  return (
    <form {...form.formProps} className="stack no-print">
      <FormMessage form={form} />
      {Object.keys(values).map((name) => (
        <HiddenField key={name} form={form} name={name} />
      ))}
      <div className="row">
        <SubmitButton form={form} quiet={quiet}>
          {children}
        </SubmitButton>
      </div>
    </form>
  )
}
