'use server'
import { redirect } from 'next/navigation'
import { afterSave } from '@/app/_components/form/after-save'
import { type FormState, refusedForm } from '@/app/_components/form/form-state'
import { staleForm } from '@/app/_components/form/merge-typed'
import { once } from '@/app/_components/form/once'
import { readForm } from '@/app/_components/form/read-form'
import { type GuardedStep, requireStep } from '@/lib/session'
import { findPart } from '@/lib/store/part'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { changePartCount, keepPart } from '@/lib/workflow/stock/keep-part'
import { stockKit } from '../tube-schema'
import { countSchema, partSchema, partValues } from './part-schema'

export async function submitPart(before: FormState, form: FormData): Promise<FormState> {
  const guarded = await requireStep()
  return once(guarded.step.actor.id, form, () => savePart(guarded, before, form))
}

async function savePart({ step, shop }: GuardedStep, before: FormState, form: FormData): Promise<FormState> {
  const kit = stockKit(shop)
  const read = readForm(partSchema(kit), before, form)
  if (!read.ok) return read.state
  const { id, version, ...details } = read.value
  const kept = await keepPart(step, { id: id || null, version, details })
  if (kept.ok) redirect(afterSave(`/stock/parts/${kept.value}`, step.now))
  const sentence = stepFaultText(kept.fault, shop)
  const current = kept.fault.code === 'stale' ? await findPart(id) : null
  if (!current) return refusedForm(before, read.values, sentence)
  return staleForm(before, read.values, { current: partValues(current, kit), sentence })
}

export async function submitCount(before: FormState, form: FormData): Promise<FormState> {
  const guarded = await requireStep()
  return once(guarded.step.actor.id, form, () => changeCount(guarded, before, form))
}

async function changeCount({ step, shop }: GuardedStep, before: FormState, form: FormData): Promise<FormState> {
  const read = readForm(countSchema, before, form)
  if (!read.ok) return read.state
  const { partId, way, number, reason } = read.value
  const changed = await changePartCount(step, { partId, by: way === 'taken' ? -number : number, reason })
  if (changed.ok) redirect(afterSave(`/stock/parts/${partId}`, step.now))
  const sentence = stepFaultText(changed.fault, shop)
  return refusedForm(before, read.values, sentence, { number: sentence })
}
