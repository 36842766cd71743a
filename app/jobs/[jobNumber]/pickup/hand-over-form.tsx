'use client'
import { FormMessage, SubmitButton } from '@/app/_components/form/form-fields'
import { freshForm } from '@/app/_components/form/form-state'
import { type FormAction, useActionForm } from '@/app/_components/form/use-action-form'
import { CollectorFields } from './collector-fields'
import { handOverSchema } from './pickup-schema'

type Props = {
  /** Bound by the page, not here: bound anew at every drawing it would never be ready on the server. */
  readonly action: FormAction
  readonly ownerName: string
}

export function HandOverForm({ action, ownerName }: Props) {
  const start = { who: 'owner', name: ownerName, identity: '', itemsNote: '', owesNote: '' }
  const form = useActionForm(action, freshForm(start), handOverSchema)
  return (
    <form {...form.formProps} className="stack no-print">
      <FormMessage form={form} />
      <CollectorFields form={form} />
      <div className="row">
        <SubmitButton form={form}>Hand over</SubmitButton>
        <span className="soft">Closes the job, freezes the sheet and opens it to be signed.</span>
      </div>
    </form>
  )
}
