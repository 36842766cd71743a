'use client'
import * as z from 'zod/mini'
import { text } from '@/app/_components/form/fields'
import { FormMessage, HiddenField, type Option, SelectField, SubmitButton } from '@/app/_components/form/form-fields'
import { freshForm } from '@/app/_components/form/form-state'
import { type FormAction, useActionForm } from '@/app/_components/form/use-action-form'

const schema = z.object({ to: text({ label: 'Move to', required: true }) })

export function MoveForm({
  action,
  version,
  moves,
}: {
  action: FormAction
  version: number
  moves: readonly Option[]
}) {
  const form = useActionForm(action, freshForm({ to: '', version: String(version) }), schema)
  return (
    <form {...form.formProps} className="stack no-print">
      <FormMessage form={form} />
      <HiddenField form={form} name="version" />
      <div className="row" style={{ alignItems: 'end' }}>
        <SelectField form={form} name="to" label="Move to" options={moves} empty="choose" />
        <SubmitButton form={form} quiet>
          Move the job
        </SubmitButton>
      </div>
    </form>
  )
}
