'use server'
import { redirect } from 'next/navigation'
import { type FormState, refusedForm } from '@/app/_components/form/form-state'
import { readForm } from '@/app/_components/form/read-form'
import { NEW_SHOP_DEFAULTS } from '@/lib/domain/shop/shop'
import { rememberSignIn } from '@/lib/session'
import { openShop } from '@/lib/workflow/shop/open-shop'
import { firstRunSchema } from './first-run-schema'

const NOT_GIVEN = { address: '', phone: '', email: '', receiptTerms: '', warrantyTerms: '' }

export async function submitFirstRun(before: FormState, form: FormData): Promise<FormState> {
  const read = readForm(firstRunSchema, before, form)
  if (!read.ok) return withoutPassPhrases(read.state)
  const { shop, person } = read.value
  const opened = await openShop({ ...NEW_SHOP_DEFAULTS, ...NOT_GIVEN, ...shop }, person, new Date())
  if (!opened.ok) {
    const sentence = 'The shop was opened meanwhile, from another window. Load this page again and sign in there.'
    return withoutPassPhrases(refusedForm(before, read.values, sentence))
  }
  await rememberSignIn(opened.value)
  redirect('/')
}

/** A pass phrase is never sent back in a page. */
function withoutPassPhrases(state: FormState): FormState {
  const { 'person.passPhrase': _first, 'person.passPhraseAgain': _again, ...values } = state.values
  return { ...state, values }
}
