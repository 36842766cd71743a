'use server'
import { redirect } from 'next/navigation'
import { type FormState, refusedForm } from '@/app/_components/form/form-state'
import { readForm } from '@/app/_components/form/read-form'
import { safeReturn } from '@/lib/domain/person/asked-for'
import { LIMIT_WINDOW_MINUTES } from '@/lib/domain/person/sign-in-limit'
import { rememberSignIn } from '@/lib/session'
import { signIn } from '@/lib/workflow/shop/sign-in'
import { signInSchema } from './sign-in-schema'

const SENTENCES = {
  wrong: 'This sign-in name and pass phrase do not belong together. Check the spelling and try again.',
  'too-many': `Too many failed tries. Wait ${LIMIT_WINDOW_MINUTES} minutes and try again.`,
} as const

export async function submitSignIn(before: FormState, form: FormData): Promise<FormState> {
  const read = readForm(signInSchema, before, form)
  if (!read.ok) return { ...read.state, values: { ...read.state.values, passPhrase: '' } }
  const { signInName, back } = read.value
  const signedIn = await signIn(read.value, new Date())
  if (!signedIn.ok) return refusedForm(before, { signInName, back }, SENTENCES[signedIn.fault])
  await rememberSignIn(signedIn.value)
  redirect(safeReturn(back))
}
