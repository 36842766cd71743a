'use client'
import { useMemo } from 'react'
import { CheckField, FormMessage, SelectField, SubmitButton, TextField } from '@/app/_components/form/form-fields'
import { freshForm } from '@/app/_components/form/form-state'
import { type FormAction, useActionForm } from '@/app/_components/form/use-action-form'
import { PAYMENT_WAYS } from '@/lib/domain/job/account'
import { CollectorFields } from './collector-fields'
import { returnSchema } from './pickup-schema'

const WAYS = PAYMENT_WAYS.map((way) => ({ value: way, text: way }))

type Props = {
  /** Bound by the page, not here: bound anew at every drawing it would never be ready on the server. */
  readonly action: FormAction
  readonly ownerName: string
  readonly currency: string
  /** What was taken out of the drawers for it; empty: nothing. */
  readonly partsIn: string
}

export function ReturnForm({ action, ownerName, currency, partsIn }: Props) {
  const schema = useMemo(() => returnSchema(currency), [currency])
  const start = {
    who: 'owner',
    name: ownerName,
    identity: '',
    itemsNote: '',
    owesNote: '',
    reason: '',
    charge: '',
    how: '',
    partsBack: '',
  }
  const form = useActionForm(action, freshForm(start), schema)
  return (
    <details open={form.status === 'refused' || undefined} className="no-print">
      <summary className="button plain">Give it back unrepaired…</summary>
      <form {...form.formProps} className="stack">
        <FormMessage form={form} />
        <p>
          The sheet says that it was neither repaired nor safety-tested and must not be connected. There is no warranty.
        </p>
        <TextField
          form={form}
          name="reason"
          label="Why it goes back unrepaired"
          lines={2}
          hint="Printed on the sheet."
        />
        <div className="fields">
          <TextField
            form={form}
            name="charge"
            label="Charged in all"
            unit={currency}
            numeric
            hint="Bench fee included; 0 when nothing is charged."
          />
          <SelectField
            form={form}
            name="how"
            label="What is left of it is settled now by"
            options={WAYS}
            empty="not now"
          />
        </div>
        {partsIn !== '' && (
          <CheckField
            form={form}
            name="partsBack"
            label="The parts are out of it again, and back in their drawers"
            hint={`Taken for this job: ${partsIn}. Without the tick they go along.`}
          />
        )}
        <CollectorFields form={form} />
        <div className="row">
          <SubmitButton form={form} quiet>
            Give back unrepaired
          </SubmitButton>
        </div>
      </form>
    </details>
  )
}
