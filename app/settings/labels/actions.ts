'use server'
import { redirect } from 'next/navigation'
import { type FormState, refusedForm } from '@/app/_components/form/form-state'
import { staleForm } from '@/app/_components/form/merge-typed'
import { once } from '@/app/_components/form/once'
import { readForm } from '@/app/_components/form/read-form'
import { type GuardedStep, requireStep } from '@/lib/session'
import { findLabelSheet } from '@/lib/store/label-sheet'
import { keepLabelSheet } from '@/lib/workflow/shop/keep-label-sheet'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { labelSheetSchema, labelSheetValues } from './label-sheet-schema'

export async function submitLabelSheet(before: FormState, form: FormData): Promise<FormState> {
  const guarded = await requireStep()
  return once(guarded.step.actor.id, form, () => saveSheet(guarded, before, form))
}

async function saveSheet({ step, shop }: GuardedStep, before: FormState, form: FormData): Promise<FormState> {
  const read = readForm(labelSheetSchema, before, form)
  if (!read.ok) return read.state
  const kept = await keepLabelSheet(step, read.value)
  if (kept.ok) redirect('/settings/labels')
  const sentence = stepFaultText(kept.fault, shop)
  const current = kept.fault.code === 'stale' && read.value.id ? await findLabelSheet(read.value.id) : null
  if (!current) return refusedForm(before, read.values, sentence)
  return staleForm(before, read.values, { current: labelSheetValues(current), sentence })
}
