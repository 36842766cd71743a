'use client'
import { FormMessage, HiddenField, SelectField, SubmitButton, TextField } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { type ActionForm, useActionForm } from '@/app/_components/form/use-action-form'
import { capital, type Words } from '@/lib/domain/words'
import { submitAmp } from './actions'
import { ampSchema } from './amp-schema'

export function AmpForm({ values, words }: { values: FormValues; words: Words }) {
  const form = useActionForm(submitAmp, freshForm(values), ampSchema)
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      {['id', 'customerId', 'version', 'base'].map((name) => (
        <HiddenField key={name} form={form} name={name} />
      ))}
      <AmpFields form={form} words={words} />
      <div className="row">
        <SubmitButton form={form}>Save amplifier</SubmitButton>
      </div>
    </form>
  )
}

const OUTPUT_OPTIONS = [
  { value: 'push-pull', text: 'push-pull' },
  { value: 'single-ended', text: 'single-ended' },
]

/** Also used at the counter, where the amplifier is part of the job's form. */
export function AmpFields({ form, words, prefix = '' }: { form: ActionForm; words: Words; prefix?: string }) {
  const protection = [
    { value: 'unknown', text: 'not known' },
    { value: 'I', text: `I: with ${words.earth}` },
    { value: 'II', text: `II: no ${words.earth} by design` },
  ]
  const mainsHint = `As marked or as its selector stands, not what the wall gives.`
  return (
    <div className="fields">
      <TextField form={form} name={`${prefix}make`} label="Make" />
      <TextField form={form} name={`${prefix}model`} label="Model" />
      <TextField form={form} name={`${prefix}serial`} label="Serial" hint="Leave empty when it bears none." />
      <TextField
        form={form}
        name={`${prefix}mainsVolts`}
        label={`${capital(words.mains)} voltage`}
        unit="V"
        numeric
        hint={mainsHint}
      />
      <SelectField form={form} name={`${prefix}protectionClass`} label="Protection class" options={protection} />
      <TextField form={form} name={`${prefix}fuse`} label="Fuse as marked" hint="T 2 A 250 V, for one." />
      <SelectField form={form} name={`${prefix}outputClass`} label="Output stage" options={OUTPUT_OPTIONS} />
      <TextField
        form={form}
        name={`${prefix}plateLoadOhms`}
        label="Load at the output transformer"
        unit="Ω"
        numeric
        hint={`${capital(words.plate)} to ${words.plate}, or the whole primary when single-ended; empty when not known.`}
      />
      <div className="wide">
        <TextField form={form} name={`${prefix}note`} label="Note" lines={2} />
      </div>
    </div>
  )
}
