'use server'
import { redirect } from 'next/navigation'
import { afterSave } from '@/app/_components/form/after-save'
import { type FormState, refusedForm } from '@/app/_components/form/form-state'
import { staleForm } from '@/app/_components/form/merge-typed'
import { once } from '@/app/_components/form/once'
import { readForm } from '@/app/_components/form/read-form'
import { type GuardedStep, requireStep } from '@/lib/session'
import { findAmp } from '@/lib/store/amp'
import { copyAmpSheet } from '@/lib/workflow/bench/copy-amp-sheet'
import { keepAmp } from '@/lib/workflow/counter/keep-amp'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { ampSchema, ampValues } from './amp-schema'
import { copySchema } from './copy-schema'

export async function submitAmp(before: FormState, form: FormData): Promise<FormState> {
  const guarded = await requireStep()
  return once(guarded.step.actor.id, form, () => writeAmp(guarded, before, form))
}

async function writeAmp({ step, shop }: GuardedStep, before: FormState, form: FormData): Promise<FormState> {
  const read = readForm(ampSchema, before, form)
  if (!read.ok) return read.state
  const { id, customerId, version, ...details } = read.value
  const kept = await keepAmp(step, id === '' ? { id: null, customerId, details } : { id, version, details })
  if (kept.ok) redirect(afterSave(`/amps/${kept.value}`, step.now))
  const sentence = stepFaultText(kept.fault, shop)
  const current = kept.fault.code === 'stale' ? await findAmp(id) : null
  return current
    ? staleForm(before, read.values, { current: ampValues(current), sentence })
    : refusedForm(before, read.values, sentence)
}

export async function submitCopy(before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const read = readForm(copySchema, before, form)
  if (!read.ok) return read.state
  const copied = await copyAmpSheet(step, read.value)
  if (copied.ok) redirect(`/amps/${read.value.ampId}`)
  return refusedForm(before, read.values, stepFaultText(copied.fault, shop))
}
