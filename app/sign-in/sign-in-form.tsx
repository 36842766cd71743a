'use client'
import { FormMessage, HiddenField, SubmitButton, TextField } from '@/app/_components/form/form-fields'
import { freshForm } from '@/app/_components/form/form-state'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { submitSignIn } from './actions'
import { signInSchema } from './sign-in-schema'

/** `back`: the page that was asked for. */
export function SignInForm({ back }: { back: string }) {
  const form = useActionForm(submitSignIn, freshForm({ signInName: '', passPhrase: '', back }), signInSchema)
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      <HiddenField form={form} name="back" />
      <TextField form={form} name="signInName" label="Sign-in name" autoComplete="username" autoFocus />
      <TextField form={form} name="passPhrase" label="Pass phrase" type="password" autoComplete="current-password" />
      <SubmitButton form={form}>Sign in</SubmitButton>
    </form>
  )
}
