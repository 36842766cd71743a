'use client'
import { SelectField, TextField } from '@/app/_components/form/form-fields'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import { classWord, TUBE_CLASSES } from '@/lib/domain/tube/own/own-type-entry'
import { capital, wordsFor } from '@/lib/domain/words'
import type { TypeKit } from './type-kit'

const CLASSES = TUBE_CLASSES.map((value) => ({ value, text: classWord(value) }))

export function NameSection({ form, kit }: { form: ActionForm; kit: TypeKit }) {
  const { tube, tubes } = wordsFor(kit.words)
  return (
    <section className="panel">
      <h2>What it is called</h2>
      <div className="fields">
        <TextField form={form} name="designation" label="Designation" hint={`As printed on the ${tube}.`} />
        <TextField
          form={form}
          name="otherNumbers"
          label="Other numbers"
          hint={`Of the very same ${tube}, with commas between.`}
        />
        <SelectField form={form} name="tubeClass" label="Class" options={CLASSES} empty="Choose" />
        <SelectField
          form={form}
          name="family"
          label="Family"
          options={kit.families.map((family) => ({ value: family, text: family }))}
          empty="One of its own"
          hint={`${capital(tubes)} of one family are fitted in each other’s place and matched with each other.`}
        />
      </div>
    </section>
  )
}
