'use server'
import { redirect } from 'next/navigation'
import * as z from 'zod/mini'
import { editedForm, editRows } from '@/app/_components/form/edit-rows'
import { text, version } from '@/app/_components/form/fields'
import { type FormState, refusedForm } from '@/app/_components/form/form-state'
import { typedValues } from '@/app/_components/form/form-values'
import { staleForm } from '@/app/_components/form/merge-typed'
import { once } from '@/app/_components/form/once'
import { readForm } from '@/app/_components/form/read-form'
import { type GuardedStep, requireStep } from '@/lib/session'
import { findOwnType } from '@/lib/store/own-type'
import { keepOwnType } from '@/lib/workflow/shop/keep-own-type'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { BLANK_ROW, ownTypeSchema, withoutBlankRows } from './own-type-schema'
import { keptValues } from './own-type-values'
import { refusedType } from './refused-type'

export async function submitType(before: FormState, form: FormData): Promise<FormState> {
  const guarded = await requireStep()
  return once(guarded.step.actor.id, form, () => writeType(guarded, before, form))
}

/** Saving a sheet takes its type into use: a withdrawn one is checked again like a new one. */
async function writeType({ step, shop }: GuardedStep, before: FormState, form: FormData): Promise<FormState> {
  const typed = typedValues(form)
  const edited = editRows(typed, typed.edit ?? '', () => BLANK_ROW)
  if (edited) return { ...editedForm(before, edited), theirs: before.theirs }
  const read = readForm(ownTypeSchema(shop.words), before, formOf(withoutBlankRows(typed)))
  if (!read.ok) return read.state
  const { id, version: saved, entry } = read.value
  const kept = await keepOwnType(step, { id: id || null, version: saved, entry, active: true })
  if (kept.ok) redirect(`/types/${kept.value}`)
  const current = kept.fault.code === 'stale' ? await findOwnType(id) : null
  if (!current) return refusedType(before, read.values, kept.fault, shop)
  return staleForm(before, read.values, { current: keptValues(current), sentence: stepFaultText(kept.fault, shop) })
}

function formOf(values: Readonly<Record<string, string>>): FormData {
  const form = new FormData()
  for (const [name, value] of Object.entries(values)) form.set(name, value)
  return form
}

const pressSchema = z.object({ id: text({ label: 'Type' }), version: version() })

export const withdrawType = async (before: FormState, form: FormData): Promise<FormState> => press(before, form, false)

export const takeTypeAgain = async (before: FormState, form: FormData): Promise<FormState> => press(before, form, true)

async function press(before: FormState, form: FormData, active: boolean): Promise<FormState> {
  const { step, shop } = await requireStep()
  const read = readForm(pressSchema, before, form)
  if (!read.ok) return read.state
  const { id, version: saved } = read.value
  const type = await findOwnType(id)
  if (!type) return refusedForm(before, read.values, stepFaultText({ code: 'not-found', what: 'This type' }, shop))
  const kept = await keepOwnType(step, { id, version: saved, entry: type.entry, active })
  if (kept.ok) redirect(`/types/${id}?seen=${step.now.getTime()}`)
  return refusedForm(before, read.values, `Nothing was changed. ${stepFaultText(kept.fault, shop)}`)
}
