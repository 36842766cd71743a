'use server'
import { redirect } from 'next/navigation'
import { type FormState, refusedForm } from '@/app/_components/form/form-state'
import { staleForm } from '@/app/_components/form/merge-typed'
import { readForm } from '@/app/_components/form/read-form'
import { requireStep } from '@/lib/session'
import { findMaker } from '@/lib/store/maker'
import { keepMaker } from '@/lib/workflow/shop/keep-maker'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { makerSchema, makerValues } from './maker-schema'

export async function submitMaker(before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const read = readForm(makerSchema, before, form)
  if (!read.ok) return read.state
  const kept = await keepMaker(step, read.value)
  if (kept.ok) redirect('/settings/makers')
  const sentence = stepFaultText(kept.fault, shop)
  if (kept.fault.code !== 'stale') return refusedForm(before, read.values, `Not saved. ${sentence}`)
  const current = makerValues(await findMaker(read.value.id ?? ''))
  return staleForm(before, read.values, { current, sentence })
}
