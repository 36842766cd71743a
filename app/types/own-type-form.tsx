'use client'
import { useMemo } from 'react'
import { FormMessage, HiddenField, SubmitButton, TextField } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { submitType } from './actions'
import { CurvesSection } from './curves-section'
import { LimitsSection } from './limits-section'
import { NameSection } from './name-section'
import { ownTypeSchema } from './own-type-schema'
import { PinsSection } from './pins-section'
import { PointsSection } from './points-section'
import type { TypeKit } from './type-kit'
import { TypedCautions } from './typed-cautions'

type Props = { readonly kit: TypeKit; readonly values: FormValues; readonly save: string }

export function OwnTypeForm({ kit, values, save }: Props) {
  const schema = useMemo(() => ownTypeSchema(kit.words), [kit.words])
  const form = useActionForm(submitType, freshForm(values), schema)
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      {['id', 'version', 'base'].map((name) => (
        <HiddenField key={name} form={form} name={name} />
      ))}
      <NameSection form={form} kit={kit} />
      <PinsSection form={form} />
      <LimitsSection form={form} words={kit.words} />
      <PointsSection form={form} words={kit.words} />
      <CurvesSection form={form} kit={kit} />
      <section className="panel stack">
        <h2>Where it was read</h2>
        <TextField
          form={form}
          name="sourceText"
          label="Read from"
          hint="Sheet, book or own measurement: title, issue, page. It stands beside every figure."
        />
        <TextField
          form={form}
          name="note"
          label="Note"
          lines={3}
          hint="What differs from like types; what is in doubt."
        />
        <TypedCautions form={form} schema={schema} words={kit.words} />
        <div className="row">
          <SubmitButton form={form}>{save}</SubmitButton>
        </div>
      </section>
    </form>
  )
}
