'use client'
/** Who takes the amplifier away, and what was agreed about what is still open. */
import { SelectField, TextField } from '@/app/_components/form/form-fields'
import type { ActionForm } from '@/app/_components/form/use-action-form'

const WHO = [
  { value: 'owner', text: 'the owner' },
  { value: 'someone else', text: 'someone else' },
]

export function CollectorFields({ form }: { form: ActionForm }) {
  return (
    <div className="fields">
      <SelectField form={form} name="who" label="Who collects" options={WHO} />
      <TextField form={form} name="name" label="Name" />
      <TextField
        form={form}
        name="identity"
        label="Identity shown"
        hint="Needed of anyone but the owner: what was shown."
      />
      <TextField
        form={form}
        name="itemsNote"
        label="What stays here, and why"
        hint="Only when not every item is ticked."
      />
      <TextField form={form} name="owesNote" label="Agreed about the balance" hint="Only when something stays open." />
    </div>
  )
}
