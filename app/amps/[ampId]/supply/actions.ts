'use server'
import { redirect } from 'next/navigation'
import { type FormState, refusedForm } from '@/app/_components/form/form-state'
import { staleForm } from '@/app/_components/form/merge-typed'
import { readForm } from '@/app/_components/form/read-form'
import { requireStep } from '@/lib/session'
import { findAmp } from '@/lib/store/amp'
import { findSupply } from '@/lib/store/amp-supply'
import { keepSupply } from '@/lib/workflow/bench/keep-supply'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { supplySchema, supplyValues } from './supply-schema'

export async function submitSupply(before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const read = readForm(supplySchema, before, form)
  if (!read.ok) return read.state
  const { ampId } = read.value
  const kept = await keepSupply(step, read.value)
  if (kept.ok) redirect(`/amps/${ampId}`)
  const sentence = stepFaultText(kept.fault, shop)
  const amp = kept.fault.code === 'stale' ? await findAmp(ampId) : null
  if (!amp) return refusedForm(before, read.values, sentence)
  return staleForm(before, read.values, {
    current: supplyValues(ampId, amp.version, await findSupply(ampId)),
    sentence,
  })
}
