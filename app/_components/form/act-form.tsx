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
  /** Folded away behind these words, with a note on what it does, until it is refused. */
  readonly fold?: { readonly summary: string; readonly note: string }
  readonly children: React.ReactNode
}

export function ActForm({ action, values = NOTHING, quiet, fold, children }: Props) {
  const form = useActionForm(action, freshForm(values), schema)
  const press = (
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
  if (!fold) return press
  return (
    <details open={form.status === 'refused' || undefined}>
      <summary>{fold.summary}</summary>
      <p className="soft">{fold.note}</p>
      {press}
    </details>
  )
}
