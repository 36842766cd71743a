'use server'
import { revalidatePath } from 'next/cache'
import { redirect } from 'next/navigation'
import { type FormState, refusedForm } from '@/app/_components/form/form-state'
import { readForm } from '@/app/_components/form/read-form'
import { requireStep } from '@/lib/session'
import { keepOperation, moveOperation } from '@/lib/workflow/shop/keep-operation'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { operationSchema } from './operation-schema'

export async function submitOperation(before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const read = readForm(operationSchema(shop.currency), before, form)
  if (!read.ok) return read.state
  const kept = await keepOperation(step, read.value)
  if (kept.ok) redirect('/settings/operations')
  return refusedForm(before, read.values, `Not saved. ${stepFaultText(kept.fault, shop)}`)
}

/** A refusal needs no sentence: the page shows the list as it is, and these buttons only to whoever keeps the shop. */
export async function submitMove(form: FormData): Promise<void> {
  const { step } = await requireStep()
  const move = form.get('move') === 'up' ? 'up' : 'down'
  await moveOperation(step, { id: String(form.get('id') ?? ''), move })
  revalidatePath('/settings/operations')
}
