'use client'
import { useMemo } from 'react'
import { FormMessage, HiddenField, SubmitButton } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { AmpFields } from '@/app/amps/amp-form'
import { CustomerFields } from '@/app/customers/customer-form'
import { type WordSet, wordsFor } from '@/lib/domain/words'
import { JobFields } from '../job-fields'
import { submitIntake } from './actions'
import { intakeSchema } from './intake-schema'

type Props = {
  readonly values: FormValues
  readonly currency: string
  readonly wordSet: WordSet
  /** Known already, ready to read; null when new. */
  readonly customerText: string | null
  readonly ampText: string | null
}

export function IntakeForm({ values, currency, wordSet, customerText, ampText }: Props) {
  const [newCustomer, newAmp] = [customerText === null, ampText === null]
  const schema = useMemo(() => intakeSchema({ newCustomer, newAmp, currency }), [newCustomer, newAmp, currency])
  const form = useActionForm(submitIntake, freshForm(values), schema)
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      <HiddenField form={form} name="customerId" />
      <HiddenField form={form} name="ampId" />
      <section className="panel">
        <h2>Customer</h2>
        {customerText === null ? <CustomerFields form={form} prefix="customer." /> : <p>{customerText}</p>}
      </section>
      <section className="panel">
        <h2>Amplifier</h2>
        {ampText === null ? <AmpFields form={form} words={wordsFor(wordSet)} prefix="amp." /> : <p>{ampText}</p>}
      </section>
      <section className="panel">
        <h2>Job</h2>
        <JobFields form={form} currency={currency} />
      </section>
      <div className="row">
        <SubmitButton form={form}>Take it in</SubmitButton>
      </div>
    </form>
  )
}
