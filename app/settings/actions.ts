'use server'
import { revalidatePath } from 'next/cache'
import { type FormState, refusedForm, savedForm } from '@/app/_components/form/form-state'
import { staleForm } from '@/app/_components/form/merge-typed'
import { type FormFaults, readForm } from '@/app/_components/form/read-form'
import { requireStep } from '@/lib/session'
import { findShop } from '@/lib/store/shop'
import { keepShop } from '@/lib/workflow/shop/keep-shop'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { shopSchema, shopValues } from './shop-schema'

export async function submitShop(before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const read = readForm(shopSchema, before, form)
  if (!read.ok) return read.state
  const kept = await keepShop(step, read.value)
  const now = shopValues((await findShop()) ?? shop)
  if (kept.ok) {
    revalidatePath('/', 'layout')
    return savedForm(before, now, 'Settings saved.')
  }
  const sentence = stepFaultText(kept.fault, shop)
  if (kept.fault.code === 'stale') return staleForm(before, read.values, { current: now, sentence })
  const faults: FormFaults = kept.fault.code === 'currency-stands' ? { currency: sentence } : {}
  return refusedForm(before, read.values, `Not saved. ${sentence}`, faults)
}
