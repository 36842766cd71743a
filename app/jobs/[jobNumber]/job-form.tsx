'use client'
import { useMemo } from 'react'
import { FormMessage, HiddenField, SubmitButton } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { JobFields } from '../job-fields'
import { jobSchema } from '../job-schema'
import { submitJob } from './actions'

export function JobForm({ values, currency }: { values: FormValues; currency: string }) {
  const schema = useMemo(() => jobSchema(currency), [currency])
  const form = useActionForm(submitJob, freshForm(values), schema)
  return (
    // Unfolded by any answer: without JavaScript what it says, and what was typed, would lie out of sight.
    <details className="no-print" open={form.state.attempt > 0 || undefined}>
      <summary className="button plain">Correct these entries…</summary>
      <form {...form.formProps} className="stack">
        <FormMessage form={form} />
        {['number', 'version', 'base'].map((name) => (
          <HiddenField key={name} form={form} name={name} />
        ))}
        <JobFields form={form} currency={currency} />
        <div className="row">
          <SubmitButton form={form}>Save entries</SubmitButton>
        </div>
      </form>
    </details>
  )
}
