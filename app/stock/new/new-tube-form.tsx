'use client'
import { useMemo } from 'react'
import { FormMessage, SubmitButton } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { FurtherFields } from '../further-fields'
import { TestFields } from '../test-fields'
import { TubeFields } from '../tube-fields'
import type { StockKit } from '../tube-schema'
import { submitNewTube } from './actions'
import { newTubeSchema } from './new-tube-schema'

type NewTube = {
  readonly kit: StockKit
  readonly values: FormValues
  readonly withTest: boolean
  /** What is seen of it was filled in by the identification: shown, to be looked over. */
  readonly isFound: boolean
}

export function NewTubeForm({ kit, values, withTest, isFound }: NewTube) {
  const schema = useMemo(() => newTubeSchema(kit), [kit])
  const form = useActionForm(submitNewTube, freshForm(values), schema)
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      <section className="panel">
        <TubeFields form={form} kit={kit} mark="Leave empty: the next free mark is given." />
        <FurtherFields form={form} open={isFound} />
      </section>
      {withTest && (
        <section className="panel">
          <h2>First test</h2>
          <p className="soft">Leave the readings empty when it was not tested.</p>
          <TestFields form={form} kit={kit} />
        </section>
      )}
      {!withTest && <p className="soft">A technician adds the test.</p>}
      <div className="row">
        <SubmitButton form={form}>Take into stock</SubmitButton>
      </div>
    </form>
  )
}
