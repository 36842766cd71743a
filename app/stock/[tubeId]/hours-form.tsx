'use client'
import { FormMessage, HiddenField, SubmitButton, TextField } from '@/app/_components/form/form-fields'
import { freshForm } from '@/app/_components/form/form-state'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { submitHours } from './actions'
import { hoursSchema } from './tube-page-schema'

type Props = { readonly tubeId: string; readonly fittingId: string; readonly hours: string }

export function HoursForm({ tubeId, fittingId, hours }: Props) {
  const form = useActionForm(submitHours, freshForm({ tubeId, fittingId, hours }), hoursSchema)
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      <HiddenField form={form} name="tubeId" />
      <HiddenField form={form} name="fittingId" />
      <TextField form={form} name="hours" label="Hours run there" unit="h" numeric hint="Empty when not known." />
      <div className="row">
        <SubmitButton form={form} quiet>
          Write the hours down
        </SubmitButton>
      </div>
    </form>
  )
}
