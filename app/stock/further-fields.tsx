'use client'
import { CheckField, SelectField, TextField } from '@/app/_components/form/form-fields'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import { SEEN, SEEN_NAMES, WARRANTY_STATES, warrantyWord } from '@/lib/domain/stock/tube-further'
import { capital } from '@/lib/domain/words'

const TITLE = 'Use, looks, box, what is seen of it, warranty, set'
const USED_OPTIONS = [
  { value: 'unused', text: 'Unused' },
  { value: 'used', text: 'Used' },
]
const WARRANTY_OPTIONS = WARRANTY_STATES.map((value) => ({ value, text: capital(warrantyWord(value)) }))

type Props = {
  readonly form: ActionForm
  readonly open?: boolean
  readonly title?: string
  /** For a delivery: a shop reference is chosen one by one. */
  readonly several?: boolean
}

/** Folded away, unless something stands in it or needs another look. */
export function FurtherFields({ form, open = false, several = false, title = TITLE }: Props) {
  return (
    <details open={open || form.status === 'refused' || undefined}>
      <summary>{title}</summary>
      <div className="stack">
        <div className="fields">
          <SelectField form={form} name="used" label="Used" options={USED_OPTIONS} empty="Not known" />
          <TextField form={form} name="cosmetics" label="Cosmetics" hint="Print, scratches, base." />
          <TextField form={form} name="box" label="Box" hint="None, original, white; its state." />
        </div>
        <fieldset>
          <legend>Seen of its construction</legend>
          <div className="fields">
            {SEEN_NAMES.map((name) => (
              <TextField key={name} form={form} name={name} label={SEEN[name]} />
            ))}
          </div>
        </fieldset>
        <div className="fields">
          <SelectField form={form} name="warranty" label="Warranty" options={WARRANTY_OPTIONS} empty="Not stated" />
          <TextField form={form} name="warrantyUntil" label="Warranty until" type="date" />
          <TextField
            form={form}
            name="hoursBefore"
            label="Hours before it came"
            unit="h"
            numeric
            hint="Empty when not known."
          />
          <TextField
            form={form}
            name="setName"
            label="Kept with set"
            list="tube-sets"
            hint="A name of yours; those of one name are kept together."
          />
        </div>
        {!several && <CheckField form={form} name="reference" label="Shop reference: kept to compare instruments by" />}
      </div>
    </details>
  )
}
