'use server'
import { redirect } from 'next/navigation'
import { afterSave } from '@/app/_components/form/after-save'
import { type FormState, refusedForm } from '@/app/_components/form/form-state'
import { typedValues } from '@/app/_components/form/form-values'
import { staleForm } from '@/app/_components/form/merge-typed'
import { once } from '@/app/_components/form/once'
import { readForm } from '@/app/_components/form/read-form'
import { type GuardedStep, requireStep } from '@/lib/session'
import { findLot } from '@/lib/store/tube-lot'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { keepLot, takeFromLot } from '@/lib/workflow/stock/keep-lot'
import { withPrices } from '../look-up-prices'
import { refusedTubes } from '../refused-tubes'
import { stockKit } from '../tube-schema'
import { lotSchema, lotValues, takeOutSchema } from './lot-schema'

export async function submitLot(before: FormState, form: FormData): Promise<FormState> {
  const guarded = await requireStep()
  return once(guarded.step.actor.id, form, () => saveLot(guarded, before, form))
}

async function saveLot({ step, shop }: GuardedStep, before: FormState, form: FormData): Promise<FormState> {
  const asked = await withPrices(before, typedValues(form), shop)
  if (asked) return asked
  const kit = stockKit(shop)
  const read = readForm(lotSchema(kit), before, form)
  if (!read.ok) return read.state
  const { id, version, ...details } = read.value
  const kept = await keepLot(step, { id: id || null, version, details })
  if (kept.ok) redirect(afterSave(`/stock/lots/${kept.value}`, step.now))
  const sentence = stepFaultText(kept.fault, shop)
  const current = kept.fault.code === 'stale' ? await findLot(id) : null
  if (!current) return refusedForm(before, read.values, sentence)
  return staleForm(before, read.values, { current: lotValues(current, kit), sentence })
}

export async function submitTakeOut(before: FormState, form: FormData): Promise<FormState> {
  const guarded = await requireStep()
  return once(guarded.step.actor.id, form, () => takeOut(guarded, before, form))
}

async function takeOut({ step, shop }: GuardedStep, before: FormState, form: FormData): Promise<FormState> {
  const read = readForm(takeOutSchema, before, form)
  if (!read.ok) return read.state
  const taken = await takeFromLot(step, read.value)
  if (!taken.ok) return refusedTubes(before, read.values, taken.fault, shop)
  redirect(`/stock/${taken.value}`)
}
