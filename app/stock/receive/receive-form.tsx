'use client'
import { useMemo } from 'react'
import { FormMessage, SelectField, SubmitButton, TextField } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { FurtherFields } from '../further-fields'
import styles from '../stock.module.css'
import { SettingFields } from '../test-fields'
import { TubeFields } from '../tube-fields'
import type { StockKit } from '../tube-schema'
import { submitDelivery } from './actions'
import { ReceiveRows } from './receive-rows'
import { receiveSchema } from './receive-schema'

const SECTION_OPTIONS = [
  { value: '1', text: 'One' },
  { value: '2', text: 'Two (twin)' },
]

export function ReceiveForm({ kit, values }: { kit: StockKit; values: FormValues }) {
  const schema = useMemo(() => receiveSchema(kit), [kit])
  const form = useActionForm(submitDelivery, freshForm(values), schema)
  return (
    <form {...form.formProps} className={`stack ${styles.delivery}`}>
      {/* Enter in any box presses the first button of a form; here that is one more row. */}
      <button
        type="submit"
        className="sr-only"
        tabIndex={-1}
        aria-hidden="true"
        formNoValidate
        name="edit"
        value="add:rows"
      />
      <FormMessage form={form} />
      <section className="panel">
        <h2>The same for all</h2>
        <TubeFields form={form} kit={kit} />
        <FurtherFields form={form} title="Further facts, the same for all" several />
      </section>
      <section className="panel">
        <h2>How they were tested</h2>
        <div className="stack">
          <SettingFields form={form} kit={kit} />
          <TextField
            form={form}
            name="testNote"
            label="Note on the tests"
            hint="What was seen on one alone is added on its own sheet."
          />
        </div>
      </section>
      <section className="panel">
        <h2>One by one</h2>
        <div className="stack">
          <p className="soft">An empty mark takes the next free one. An empty row is passed over.</p>
          <div className="fields">
            <SelectField form={form} name="sections" label="Sections" options={SECTION_OPTIONS} />
            <TextField
              form={form}
              name="untested"
              label="Untested, without a row"
              numeric
              hint="How many; marks are given."
            />
          </div>
          <ReceiveRows form={form} kit={kit} />
          <div className="row">
            <button type="submit" className="button quiet" formNoValidate name="edit" value="add:rows">
              Add a row
            </button>
            <SubmitButton form={form}>Take all into stock</SubmitButton>
          </div>
        </div>
      </section>
    </form>
  )
}
