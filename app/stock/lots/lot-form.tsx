'use client'
import { useMemo } from 'react'
import { FormMessage, HiddenField, SelectField, SubmitButton, TextField } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { conditionWord, TUBE_CONDITIONS } from '@/lib/domain/stock/tube'
import { capital } from '@/lib/domain/words'
import type { StockKit } from '../tube-schema'
import { submitLot, submitTakeOut } from './actions'
import { lotSchema, takeOutSchema } from './lot-schema'

const CONDITION_OPTIONS = TUBE_CONDITIONS.map((value) => ({ value, text: capital(conditionWord(value)) }))

export function LotForm({ kit, values }: { kit: StockKit; values: FormValues }) {
  const schema = useMemo(() => lotSchema(kit), [kit])
  const form = useActionForm(submitLot, freshForm(values), schema)
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      <HiddenField form={form} name="id" />
      <HiddenField form={form} name="version" />
      <HiddenField form={form} name="base" />
      <div className="fields">
        <TextField form={form} name="designation" label="Type" list="tube-types" hint="As printed on them." />
        <SelectField form={form} name="condition" label="Condition" options={CONDITION_OPTIONS} />
        <TextField form={form} name="count" label="Count" numeric />
        <TextField form={form} name="location" label="Location" hint="Drawer, shelf or box." />
        <TextField form={form} name="price" label="Price" unit={kit.currency} numeric hint="For one, before tax." />
        <TextField
          form={form}
          name="cost"
          label="Paid"
          unit={kit.currency}
          numeric
          hint="For one; empty when not known."
        />
        <div className="wide">
          <TextField form={form} name="note" label="Note" hint="Where they came from, what was seen of them." />
        </div>
      </div>
      <div className="row">
        <SubmitButton form={form}>{values.id ? 'Save corrections' : 'Write the lot down'}</SubmitButton>
      </div>
    </form>
  )
}

export function TakeOutForm({ lotId, once }: { lotId: string; once: string }) {
  const form = useActionForm(submitTakeOut, freshForm({ lotId, mark: '', once }), takeOutSchema)
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      <HiddenField form={form} name="lotId" />
      <TextField form={form} name="mark" label="Mark" hint="Leave empty: the next free mark is given." />
      <div className="row">
        <SubmitButton form={form}>Take one out and mark it</SubmitButton>
      </div>
    </form>
  )
}
