'use client'
import { useMemo } from 'react'
import { FormMessage, SelectField, SubmitButton, TextField } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { conditionWord, TUBE_CONDITIONS } from '@/lib/domain/stock/tube'
import { capital, wordsFor } from '@/lib/domain/words'
import { SettingFields } from '../test-fields'
import type { StockKit } from '../tube-schema'
import { submitStart } from './actions'
import { startSheetSchema } from './start-schema'

const CONDITION_OPTIONS = TUBE_CONDITIONS.map((value) => ({ value, text: capital(conditionWord(value)) }))
const SECTION_OPTIONS = [
  { value: '1', text: 'One' },
  { value: '2', text: 'Two (twin)' },
]

export function StartForm({ kit, values }: { kit: StockKit; values: FormValues }) {
  const schema = useMemo(() => startSheetSchema(kit), [kit])
  const form = useActionForm(submitStart, freshForm(values), schema)
  const { tubes } = wordsFor(kit.words)
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      <section className="panel stack">
        <h2>Once for all</h2>
        <div className="fields">
          <TextField
            form={form}
            name="designation"
            label="Type"
            list="tube-types"
            hint="As printed: 6L6GC, EL34."
            autoFocus
          />
          <SelectField form={form} name="sections" label="Sections" options={SECTION_OPTIONS} />
        </div>
        <SettingFields form={form} kit={kit} />
      </section>
      <section className="panel stack">
        <h2>For {tubes} that are new here</h2>
        <p className="soft">
          A mark that is not in the stock can be taken in on the way. Then this is written down for it.
        </p>
        <div className="fields">
          <SelectField form={form} name="condition" label="Condition of new ones" options={CONDITION_OPTIONS} />
          <TextField form={form} name="location" label="Location of new ones" hint="Drawer, shelf or box." />
          <TextField
            form={form}
            name="price"
            label="Price of new ones"
            unit={kit.currency}
            numeric
            hint="For one, before tax."
          />
          <TextField
            form={form}
            name="cost"
            label="Paid for new ones"
            unit={kit.currency}
            numeric
            hint="Empty when not known."
          />
        </div>
      </section>
      <div className="row">
        <SubmitButton form={form}>Start the sheet</SubmitButton>
      </div>
    </form>
  )
}
