'use client'
import { useMemo } from 'react'
import { FormMessage, SelectField, SubmitButton, TextField } from '@/app/_components/form/form-fields'
import { freshForm } from '@/app/_components/form/form-state'
import { type FormAction, useActionForm } from '@/app/_components/form/use-action-form'
import { PAYMENT_WAYS } from '@/lib/domain/job/account'
import { paymentSchema } from './pickup-schema'

const WAYS = PAYMENT_WAYS.map((way) => ({ value: way, text: way }))

type Props = {
  /** Bound by the page, not here: bound anew at every drawing it would never be ready on the server. */
  readonly action: FormAction
  readonly currency: string
  /** Money goes back to the customer. */
  readonly back: boolean
  /** What is open, as it is typed. */
  readonly amount: string
  /** Marks this sheet, so that two presses take one payment. */
  readonly once: string
}

export function PaymentForm({ action, currency, back, amount, once }: Props) {
  const schema = useMemo(() => paymentSchema(currency), [currency])
  const form = useActionForm(action, freshForm({ amount, how: '', once }), schema)
  return (
    <form {...form.formProps} className="stack no-print">
      <FormMessage form={form} />
      <div className="fields">
        <TextField form={form} name="amount" label={back ? 'Give back' : 'Amount'} unit={currency} numeric />
        <SelectField form={form} name="how" label={back ? 'Given back by' : 'Paid by'} options={WAYS} empty="choose" />
      </div>
      <div className="row">
        <SubmitButton form={form} quiet>
          {back ? 'Give back' : 'Take payment'}
        </SubmitButton>
      </div>
    </form>
  )
}
