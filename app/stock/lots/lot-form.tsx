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
import { PriceFields } from '../price-fields'
import { PriceHelp } from '../price-help'
import { CONDITION_OPTIONS } from '../tube-fields'
import type { StockKit } from '../tube-schema'
import { submitLot, submitTakeOut } from './actions'
import { lotSchema, takeOutSchema } from './lot-schema'

type Props = {
  readonly kit: StockKit
  readonly values: FormValues
  /** Prices beside it, of a lot that is saved. */
  readonly prices?: FormValues
}

export function LotForm({ kit, values, prices }: Props) {
  const schema = useMemo(() => lotSchema(kit), [kit])
  const form = useActionForm(submitLot, freshForm(values), schema)
  return (
    <form {...form.formProps} className="stack">
      <SheetHead form={form} />
      <div className="fields">
        <TextField form={form} name="designation" label="Type" list="tube-types" hint="As printed on them." />
        <SelectField form={form} name="condition" label="Condition" options={CONDITION_OPTIONS} />
        <TextField form={form} name="count" label="Count" numeric />
        <PriceFields form={form} kit={kit} />
        <PriceHelp form={form} start={prices} />
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
