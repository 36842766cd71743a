'use client'
import { useMemo } from 'react'
import {
  FormMessage,
  HiddenField,
  SelectField,
  SheetHead,
  SubmitButton,
  TextField,
} from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { PART_KINDS } from '@/lib/domain/stock/part'
import { capital } from '@/lib/domain/words'
import { PriceFields } from '../price-fields'
import type { StockKit } from '../tube-schema'
import { submitCount, submitPart } from './actions'
import { countSchema, partSchema } from './part-schema'

const KIND_OPTIONS = PART_KINDS.map((value) => ({ value, text: capital(value) }))
const WAY_OPTIONS = [
  { value: 'taken', text: 'Taken away' },
  { value: 'put-in', text: 'Put in' },
]

export function PartForm({ kit, values }: { kit: StockKit; values: FormValues }) {
  const schema = useMemo(() => partSchema(kit), [kit])
  const form = useActionForm(submitPart, freshForm(values), schema)
  return (
    <form {...form.formProps} className="stack">
      <SheetHead form={form} />
      <div className="fields">
        <TextField form={form} name="name" label="Name" />
        <SelectField form={form} name="kind" label="Kind" options={KIND_OPTIONS} empty="Choose" />
        <TextField form={form} name="value" label="Value" hint="As written on it: T 2 A 250 V, 470 Ω 5 W." />
        <TextField form={form} name="count" label="Count" numeric />
        <TextField
          form={form}
          name="reorderLevel"
          label="Reorder at"
          numeric
          hint="When so many are free, or fewer; empty: not watched."
        />
        <PriceFields form={form} kit={kit} />
      </div>
      <div className="row">
        <SubmitButton form={form}>{values.id ? 'Save corrections' : 'Write the part down'}</SubmitButton>
      </div>
    </form>
  )
}

export function CountForm({ partId, once }: { partId: string; once: string }) {
  const form = useActionForm(
    submitCount,
    freshForm({ partId, way: 'taken', number: '', reason: '', once }),
    countSchema,
  )
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      <HiddenField form={form} name="partId" />
      <div className="fields">
        <SelectField form={form} name="way" label="What happened" options={WAY_OPTIONS} />
        <TextField form={form} name="number" label="How many" numeric />
      </div>
      <TextField form={form} name="reason" label="Reason" hint="The job it went into, the delivery, a recount." />
      <div className="row">
        <SubmitButton form={form} quiet>
          Change the count
        </SubmitButton>
      </div>
    </form>
  )
}
