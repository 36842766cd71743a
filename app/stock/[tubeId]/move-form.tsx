'use client'
import { FormMessage, HiddenField, SelectField, SubmitButton, TextField } from '@/app/_components/form/form-fields'
import { freshForm } from '@/app/_components/form/form-state'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { submitMove } from './actions'
import { moveSchema } from './tube-page-schema'

const OUT_OPTIONS = [
  { value: 'sold', text: 'Sold' },
  { value: 'scrapped', text: 'Scrapped' },
]

type Props = { readonly tubeId: string; readonly version: number; readonly inStock: boolean }

export function MoveForm({ tubeId, version, inStock }: Props) {
  const values = { tubeId, version: String(version), to: inStock ? '' : 'in-stock', reason: '' }
  const form = useActionForm(submitMove, freshForm(values), moveSchema)
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      <HiddenField form={form} name="tubeId" />
      <HiddenField form={form} name="version" />
      {inStock ? (
        <SelectField form={form} name="to" label="Where to" options={OUT_OPTIONS} empty="Choose" />
      ) : (
        <HiddenField form={form} name="to" />
      )}
      <TextField
        form={form}
        name="reason"
        label="Reason"
        hint={inStock ? 'Who bought it, or what is wrong with it.' : 'Why it comes back.'}
      />
      <div className="row">
        <SubmitButton form={form} quiet>
          {inStock ? 'Take out of stock' : 'Put back into stock'}
        </SubmitButton>
      </div>
    </form>
  )
}
