'use server'
import { redirect } from 'next/navigation'
import { type FormState, refusedForm } from '@/app/_components/form/form-state'
import { staleForm } from '@/app/_components/form/merge-typed'
import { readForm } from '@/app/_components/form/read-form'
import { requireStep } from '@/lib/session'
import { findInstrument } from '@/lib/store/instrument'
import { keepInstrument } from '@/lib/workflow/shop/keep-instrument'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { instrumentSchema, instrumentValues } from './instrument-schema'

export async function submitInstrument(before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const read = readForm(instrumentSchema, before, form)
  if (!read.ok) return read.state
  const kept = await keepInstrument(step, read.value)
  if (kept.ok) redirect('/settings/instruments')
  const sentence = stepFaultText(kept.fault, shop)
  if (kept.fault.code !== 'stale') return refusedForm(before, read.values, `Not saved. ${sentence}`)
  const current = instrumentValues(await findInstrument(read.value.id ?? ''))
  return staleForm(before, read.values, { current, sentence })
}
