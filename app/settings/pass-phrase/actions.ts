'use server'
import { type FormState, refusedForm, savedForm } from '@/app/_components/form/form-state'
import { readForm } from '@/app/_components/form/read-form'
import { rememberSignIn, requireStep } from '@/lib/session'
import { changePassPhrase } from '@/lib/workflow/shop/change-pass-phrase'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { passPhraseSchema } from './pass-phrase-schema'

export async function submitPassPhrase(before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const read = readForm(passPhraseSchema, before, form)
  // A pass phrase is never sent back in a page.
  if (!read.ok) return { ...read.state, values: {} }
  const changed = await changePassPhrase(step, read.value)
  if (!changed.ok) return refusedForm(before, {}, stepFaultText(changed.fault, shop))
  await rememberSignIn(changed.value)
  return savedForm(before, {}, 'Your new pass phrase holds from now on. Every other screen of yours is signed out.')
}
