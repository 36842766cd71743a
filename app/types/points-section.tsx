'use client'
import { rowsOf } from '@/app/_components/form/edit-rows'
import { TextField } from '@/app/_components/form/form-fields'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import { rowName } from '@/lib/domain/tube/figure-names'
import { MOST_OWN_ROWS } from '@/lib/domain/tube/own/own-type-entry'
import { type WordSet, wordsFor } from '@/lib/domain/words'
import { ROW_BOUNDS, ROW_FIELDS } from './own-type-schema'
import styles from './types.module.css'

export function PointsSection({ form, words: set }: { form: ActionForm; words: WordSet }) {
  const count = rowsOf(form.state.values, 'rows').length
  const { plate } = wordsFor(set)
  return (
    <section className="panel stack">
      <h2>Operating points</h2>
      <p className="soft">
        Printed or measured, no signal, against the cathode; grid volts with their minus. A row left empty is passed
        over. The curves below are moved to these points.
      </p>
      {Array.from({ length: count }, (_, row) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place; the form holds what is in it
        <PointRow key={row} form={form} row={row} words={set} />
      ))}
      {count < MOST_OWN_ROWS && (
        <div className="row">
          <button type="submit" className="button quiet" formNoValidate name="edit" value="add:rows">
            Add an operating point
          </button>
        </div>
      )}
      <fieldset>
        <legend>Drop of a rectifier</legend>
        <p className="soft">Of one {plate}, at one current. Other classes leave it empty.</p>
        <div className={styles.drop}>
          <TextField form={form} name="dropVolts" label="Drop" unit="V" numeric />
          <TextField form={form} name="dropMilliamps" label={`At, per ${plate}`} unit="mA" numeric />
        </div>
      </fieldset>
    </section>
  )
}

function PointRow({ form, row, words: set }: { form: ActionForm; row: number; words: WordSet }) {
  const words = wordsFor(set)
  return (
    <fieldset>
      <legend>Operating point {row + 1}</legend>
      <div className={styles.point}>
        {ROW_FIELDS.map((field) => (
          <TextField
            key={field}
            form={form}
            name={`rows.${row}.${field}`}
            label={rowName(field, words).label}
            unit={ROW_BOUNDS[field].unit || undefined}
            numeric
          />
        ))}
      </div>
      <div className="row">
        <button type="submit" className="button plain" formNoValidate name="edit" value={`remove:rows:${row}`}>
          Take out<span className="sr-only"> operating point {row + 1}</span>
        </button>
      </div>
    </fieldset>
  )
}
