'use client'
import { SelectField, TextField } from '@/app/_components/form/form-fields'
import type { FormValues } from '@/app/_components/form/form-state'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import { conditionWord, TUBE_CONDITIONS } from '@/lib/domain/stock/tube'
import { capital } from '@/lib/domain/words'
import { PriceFields } from './price-fields'
import { PriceHelp } from './price-help'
import type { StockKit } from './tube-schema'

export const CONDITION_OPTIONS = TUBE_CONDITIONS.map((value) => ({ value, text: capital(conditionWord(value)) }))

type Props = {
  readonly form: ActionForm
  readonly kit: StockKit
  /** Hint of the mark. Left out when a delivery is taken in: there each row has its own. */
  readonly mark?: string
  /** Prices beside it, of one that is saved. */
  readonly prices?: FormValues
}

export function TubeFields({ form, kit, mark, prices }: Props) {
  return (
    <div className="fields">
      {mark !== undefined && <TextField form={form} name="mark" label="Mark" hint={mark} />}
      <TextField
        form={form}
        name="designation"
        label="Type"
        list="tube-types"
        hint="As printed on it: 6L6GC, EL34, CV511."
      />
      <SelectField form={form} name="condition" label="Condition" options={CONDITION_OPTIONS} empty="Choose" />
      <PriceFields form={form} kit={kit} />
      <PriceHelp form={form} start={prices} />
      <div className="wide">
        <TextField
          form={form}
          name="construction"
          label="Construction"
          hint="Plates, getter, base, bulb: what can be seen."
        />
      </div>
      <div className="wide">
        <TextField form={form} name="acquired" label="How it came" />
      </div>
    </div>
  )
}
