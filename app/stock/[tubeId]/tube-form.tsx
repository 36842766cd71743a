'use client'
import { useMemo } from 'react'
import { FormMessage, HiddenField, SubmitButton } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { FurtherFields } from '../further-fields'
import { TubeFields } from '../tube-fields'
import { type StockKit, tubeSchema } from '../tube-schema'
import { submitTube } from './actions'

export function TubeForm({ kit, values }: { kit: StockKit; values: FormValues }) {
  const schema = useMemo(() => tubeSchema(kit), [kit])
  const form = useActionForm(submitTube, freshForm(values), schema)
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      <HiddenField form={form} name="id" />
      <HiddenField form={form} name="version" />
      <HiddenField form={form} name="base" />
      <TubeFields form={form} kit={kit} mark="As it is written on the glass or base." />
      <FurtherFields form={form} />
      <div className="row">
        <SubmitButton form={form}>Save corrections</SubmitButton>
      </div>
    </form>
  )
}
