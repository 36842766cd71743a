'use client'
import { SelectField, TextField } from '@/app/_components/form/form-fields'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import { conditionWord, TUBE_CONDITIONS } from '@/lib/domain/stock/tube'
import { capital } from '@/lib/domain/words'
import type { StockKit } from './tube-schema'

const CONDITION_OPTIONS = TUBE_CONDITIONS.map((value) => ({ value, text: capital(conditionWord(value)) }))

/** Without a mark when a delivery is taken in: there each row has its own. */
export function TubeFields({ form, kit, mark }: { form: ActionForm; kit: StockKit; mark?: string }) {
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
