'use client'
import { useMemo } from 'react'
import { CheckField, FormMessage, HiddenField, SubmitButton } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { type Electrodes, TestFields } from '../test-fields'
import type { StockKit } from '../tube-schema'
import { submitTest } from './actions'
import { addTestSchema } from './tube-page-schema'

type Props = {
  readonly kit: StockKit
  readonly values: FormValues
  readonly electrodes: Electrodes
  readonly rejected: boolean
}

export function AddTestForm({ kit, values, electrodes, rejected }: Props) {
  const schema = useMemo(() => addTestSchema(kit.words), [kit])
  const form = useActionForm(submitTest, freshForm(values), schema)
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      <HiddenField form={form} name="tubeId" />
      <TestFields form={form} kit={kit} electrodes={electrodes} />
      {!rejected && <CheckField form={form} name="reject" label="Mark as a reject: never proposed for a set" />}
      <div className="row">
        <SubmitButton form={form}>Write the test down</SubmitButton>
      </div>
    </form>
  )
}
