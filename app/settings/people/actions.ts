'use server'
import { revalidatePath } from 'next/cache'
import { redirect } from 'next/navigation'
import { type FormState, type FormValues, refusedForm, savedForm } from '@/app/_components/form/form-state'
import { type FormFaults, readForm } from '@/app/_components/form/read-form'
import { requireStep } from '@/lib/session'
import { addPerson, givePassPhrase, keepPerson } from '@/lib/workflow/shop/keep-person'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { givenPassPhraseSchema, newPersonSchema, personSchema } from './person-schema'

/** A pass phrase is never sent back in a page. */
const withoutPassPhrases = ({ passPhrase: _first, passPhraseAgain: _again, ...values }: FormValues): FormValues =>
  values
const hidingPassPhrases = (state: FormState): FormState => ({ ...state, values: withoutPassPhrases(state.values) })

export async function submitNewPerson(before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const read = readForm(newPersonSchema, before, form)
  if (!read.ok) return hidingPassPhrases(read.state)
  const added = await addPerson(step, read.value)
  if (added.ok) redirect('/settings/people')
  const sentence = stepFaultText(added.fault, shop)
  const faults: FormFaults = added.fault.code === 'sign-in-name-taken' ? { signInName: sentence } : {}
  return hidingPassPhrases(refusedForm(before, read.values, `Not saved. ${sentence}`, faults))
}

export async function submitPerson(before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const read = readForm(personSchema, before, form)
  if (!read.ok) return read.state
  const { id, ...details } = read.value
  const kept = await keepPerson(step, { id, details })
  if (kept.ok) redirect('/settings/people')
  return refusedForm(before, read.values, `Not saved. ${stepFaultText(kept.fault, shop)}`)
}

export async function submitGivenPassPhrase(before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const read = readForm(givenPassPhraseSchema, before, form)
  if (!read.ok) return hidingPassPhrases(read.state)
  const given = await givePassPhrase(step, read.value)
  if (!given.ok) return refusedForm(before, { id: read.value.id }, stepFaultText(given.fault, shop))
  revalidatePath('/settings/people', 'layout')
  return savedForm(
    before,
    { id: read.value.id },
    'The new pass phrase holds from now on. Every screen signed in with the old one is signed out.',
  )
}
