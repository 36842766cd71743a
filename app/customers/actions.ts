'use server'
import { redirect } from 'next/navigation'
import { afterSave } from '@/app/_components/form/after-save'
import { type FormState, refusedForm } from '@/app/_components/form/form-state'
import { staleForm } from '@/app/_components/form/merge-typed'
import { once } from '@/app/_components/form/once'
import { readForm } from '@/app/_components/form/read-form'
import { type GuardedStep, requireStep } from '@/lib/session'
import { findCustomer } from '@/lib/store/customer'
import { keepCustomer } from '@/lib/workflow/counter/keep-customer'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { customerSchema, customerValues } from './customer-schema'

export async function submitCustomer(before: FormState, form: FormData): Promise<FormState> {
  const guarded = await requireStep()
  return once(guarded.step.actor.id, form, () => writeCustomer(guarded, before, form))
}

async function writeCustomer({ step, shop }: GuardedStep, before: FormState, form: FormData): Promise<FormState> {
  const read = readForm(customerSchema, before, form)
  if (!read.ok) return read.state
  const { id, version, ...details } = read.value
  const kept = await keepCustomer(step, { id: id || null, version, details })
  if (kept.ok) redirect(afterSave(`/customers/${kept.value}`, step.now))
  const sentence = stepFaultText(kept.fault, shop)
  if (kept.fault.code !== 'stale') return refusedForm(before, read.values, sentence)
  return staleForm(before, read.values, { current: customerValues(await findCustomer(id)), sentence })
}
