'use client'
import { rowsOf } from '@/app/_components/form/edit-rows'
import { CheckField, TextField } from '@/app/_components/form/form-fields'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import styles from './job-fields.module.css'

export function JobFields({ form, currency }: { form: ActionForm; currency: string }) {
  return (
    <div className="fields">
      <div className="wide">
        <TextField form={form} name="fault" label="Fault in the customer's words" lines={3} />
      </div>
      <div className="wide">
        <TextField
          form={form}
          name="faultSettings"
          label="Settings that show it"
          hint="Channel, volume, what is plugged in, how soon it happens."
        />
      </div>
      <TextField
        form={form}
        name="spendingLimit"
        label="Spending limit"
        unit={currency}
        numeric
        hint="Empty: every amount is asked first."
      />
      <TextField form={form} name="promisedOn" label="Promised" type="date" />
      <CheckField form={form} name="oldPartsBack" label="Customer wants the old parts back" />
      <div className="wide">
        <ItemRows form={form} />
      </div>
    </div>
  )
}

function ItemRows({ form }: { form: ActionForm }) {
  const rows = rowsOf(form.state.values, 'items')
  return (
    <fieldset>
      <legend>Items left with it</legend>
      {rows.map((_, index) => (
        // Rows have no name of their own; their place is what they are known by.
        // biome-ignore lint/suspicious/noArrayIndexKey: the form is drawn anew after every edit of its rows
        <div key={index} className={styles.item}>
          <TextField form={form} name={`items.${index}.count`} label="Count" numeric />
          <TextField form={form} name={`items.${index}.label`} label="Item" />
          <button className="button quiet" type="submit" name="edit" value={`remove:items:${index}`} formNoValidate>
            Take out
          </button>
        </div>
      ))}
      {rows.length === 0 && <p className="soft">Nothing but the amplifier itself.</p>}
      <button className="button quiet" type="submit" name="edit" value="add:items" formNoValidate>
        Add an item
      </button>
    </fieldset>
  )
}
