'use client'
import { useMemo } from 'react'
import { SheetHead, SubmitButton } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { FurtherFields } from '../further-fields'
import { TubeFields } from '../tube-fields'
import { type StockKit, tubeSchema } from '../tube-schema'
import { submitTube } from './actions'

type Props = {
  readonly kit: StockKit
  readonly values: FormValues
  readonly prices: FormValues
}

export function TubeForm({ kit, values, prices }: Props) {
  const schema = useMemo(() => tubeSchema(kit), [kit])
  const form = useActionForm(submitTube, freshForm(values), schema)
  return (
    <form {...form.formProps} className="stack">
      <SheetHead form={form} />
      <TubeFields form={form} kit={kit} mark="As it is written on the glass or base." prices={prices} />
      <FurtherFields form={form} />
      <div className="row">
        <SubmitButton form={form}>Save corrections</SubmitButton>
      </div>
    </form>
  )
}
