'use client'
import { FormMessage, SubmitButton, TextField } from '@/app/_components/form/form-fields'
import { freshForm } from '@/app/_components/form/form-state'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { SHORTEST_PASS_PHRASE } from '@/lib/domain/person/password'
import { submitPassPhrase } from './actions'
import { passPhraseSchema } from './pass-phrase-schema'

export function PassPhraseForm() {
  const form = useActionForm(submitPassPhrase, freshForm({}), passPhraseSchema)
  const hint = `At least ${SHORTEST_PASS_PHRASE} characters; a few words are good.`
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      <TextField
        form={form}
        name="present"
        label="Present pass phrase"
        type="password"
        autoComplete="current-password"
      />
      <TextField
        form={form}
        name="next"
        label="New pass phrase"
        type="password"
        autoComplete="new-password"
        hint={hint}
      />
      <TextField
        form={form}
        name="nextAgain"
        label="New pass phrase again"
        type="password"
        autoComplete="new-password"
      />
      <div className="row">
        <SubmitButton form={form}>Change pass phrase</SubmitButton>
      </div>
    </form>
  )
}
