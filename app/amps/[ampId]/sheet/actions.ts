'use server'
import { redirect } from 'next/navigation'
import { editedForm } from '@/app/_components/form/edit-rows'
import { type FormState, refusedForm, savedForm } from '@/app/_components/form/form-state'
import { typedValues } from '@/app/_components/form/form-values'
import { readForm } from '@/app/_components/form/read-form'
import { requireStep } from '@/lib/session'
import { findAmpSheet } from '@/lib/store/amp'
import { keepAmpSheet } from '@/lib/workflow/bench/keep-amp-sheet'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { editSheet } from './edit-sheet'
import { leftOutText } from './left-out-text'
import { staleSheet } from './merge-sheets'
import { sheetFormValues, sheetSchema } from './sheet-schema'

export async function submitSheet(before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const typed = typedValues(form)
  const edited = editSheet(typed, typed.edit ?? '')
  if (edited) return { ...editedForm(before, edited), theirs: {} }
  const read = readForm(sheetSchema, before, form)
  if (!read.ok) return read.state
  const { ampId } = read.value
  const kept = await keepAmpSheet(step, read.value)
  if (kept.ok && kept.value.leftOut.length === 0) redirect(`/amps/${ampId}`)
  const current = await findAmpSheet(ampId)
  if (kept.ok) return current ? savedForm(before, sheetFormValues(current), leftOutText(kept.value.leftOut)) : before
  const sentence = stepFaultText(kept.fault, shop)
  if (kept.fault.code !== 'stale' || !current) return refusedForm(before, read.values, sentence)
  return staleSheet(before, read.values, { current: sheetFormValues(current), sentence })
}
