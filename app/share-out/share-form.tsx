'use client'
/** Which jobs want a set, and within which limits. */
import { CheckField, FormMessage, SubmitButton, TextField } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { useActionForm } from '@/app/_components/form/use-action-form'
import type { Words } from '@/lib/domain/words'
import { startShare } from './actions'
import { shareSchema, tickName } from './share-schema'

export type JobToTick = {
  readonly number: string
  readonly what: string
  readonly wants: string
  readonly note: string | null
}

type Props = {
  readonly jobs: readonly JobToTick[]
  readonly values: FormValues
  readonly currency: string
  readonly words: Words
}

export function ShareForm({ jobs, values, currency, words }: Props) {
  const form = useActionForm(startShare, freshForm(values), shareSchema(currency, words))
  return (
    <form {...form.formProps} className="stack no-print">
      <FormMessage form={form} />
      <fieldset className="panel">
        <legend>Jobs that want a set</legend>
        <div className="fields">
          {jobs.map(({ number, what, wants, note }) => (
            <CheckField
              key={number}
              form={form}
              name={tickName(number)}
              label={`${number} ${what}`}
              hint={note ? `${wants}. ${note}` : wants}
            />
          ))}
        </div>
      </fieldset>
      <fieldset className="panel">
        <legend>Limits for every set</legend>
        <div className="fields">
          <TextField form={form} name="age" label="Test not older than" unit="days" numeric hint="Empty: any age." />
          <TextField form={form} name="milliamps" label={`Difference in ${words.plate} current`} unit="mA" numeric />
          <TextField form={form} name="percent" label="Difference in transconductance" unit="%" numeric />
          <TextField
            form={form}
            name="cap"
            label="Price of a set at most"
            unit={currency}
            numeric
            hint="Empty: no limit."
          />
          <CheckField
            form={form}
            name="over"
            label={`Take ${words.tubes} beyond their printed voltages`}
            hint={`Many guitar amplifiers exceed them and the better old ${words.tubes} stand it: common practice, at your judgement.`}
          />
          <CheckField form={form} name="one" label="One designation in a set" />
        </div>
        <p className="soft">
          5 mA and 10 % are common practice, no source. Here they are bounds: a set outside them is no set.
        </p>
      </fieldset>
      <div className="row">
        <SubmitButton form={form}>Share out</SubmitButton>
      </div>
    </form>
  )
}
