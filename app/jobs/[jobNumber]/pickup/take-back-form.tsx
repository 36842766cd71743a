'use client'
import { FormMessage, SubmitButton, TextField } from '@/app/_components/form/form-fields'
import { freshForm } from '@/app/_components/form/form-state'
import { type FormAction, useActionForm } from '@/app/_components/form/use-action-form'
import { takeBackSchema } from './pickup-schema'

const START = { reason: '' }

export function TakeBackForm({ action }: { readonly action: FormAction }) {
  const form = useActionForm(action, freshForm(START), takeBackSchema)
  return (
    <details open={form.status === 'refused' || undefined} className="no-print">
      <summary className="button plain">Take back the hand-over…</summary>
      <form {...form.formProps} className="stack">
        <FormMessage form={form} />
        <p>
          For a hand-over noted by mistake: the amplifier is still here. The job is ready to be handed over again;
          payments, items given back and parts taken out stay as noted. The sheet that was printed no longer holds, and
          says so when it is opened: fetch back any print of it.
        </p>
        <TextField
          form={form}
          name="reason"
          label="Why it is taken back"
          lines={2}
          hint="Stands in the history and on the old sheet."
        />
        <div className="row">
          <SubmitButton form={form} quiet>
            Take back the hand-over
          </SubmitButton>
        </div>
      </form>
    </details>
  )
}
