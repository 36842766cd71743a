'use client'
import { SelectField } from '@/app/_components/form/form-fields'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import { wordsFor } from '@/lib/domain/words'
import type { TypeKit } from './type-kit'

const DEGREES = [
  { value: 'same', text: 'the same system' },
  { value: 'similar', text: 'similar: its error counts double' },
]

export function CurvesSection({ form, kit }: { form: ActionForm; kit: TypeKit }) {
  const { plate } = wordsFor(kit.words)
  return (
    <section className="panel stack">
      <h2>Curves</h2>
      <p className="soft">
        To foretell currents the bench needs {plate} curves. Those of a handbook type stand in. Without any, readings
        are still judged against the limits.
      </p>
      <div className="fields">
        <SelectField form={form} name="curvesLike" label="Curves like" options={kit.curves} empty="None" />
        <SelectField form={form} name="curvesDegree" label="How like" options={DEGREES} empty="Choose" />
      </div>
    </section>
  )
}
