'use server'
import { redirect } from 'next/navigation'
import { type FormState, refusedForm } from '@/app/_components/form/form-state'
import { readForm } from '@/app/_components/form/read-form'
import { requireStep } from '@/lib/session'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { cancelImport, continueImport, startImport } from '@/lib/workflow/tables/import-tubes'
import { TUBE_COLUMN_NAMES, type TubeColumn } from '@/lib/workflow/tables/tube-column-names'
import { undoImport } from '@/lib/workflow/tables/undo-import'
import { mappingSchema } from './mapping-schema'

export async function submitOrder(before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const read = readForm(mappingSchema(TUBE_COLUMN_NAMES), before, form)
  if (!read.ok) return read.state
  const { importId: id, mode, columns } = read.value
  const started = await startImport(step, {
    id,
    mapping: columns as (TubeColumn | null)[],
    allOrNothing: mode === 'all',
  })
  if (!started.ok) return refusedForm(before, read.values, stepFaultText(started.fault, shop))
  redirect(`/stock/exchange/${id}`)
}

export async function submitContinue(before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const id = String(form.get('importId'))
  const begun = await continueImport(step, id)
  if (!begun.ok) return refusedForm(before, { importId: id }, stepFaultText(begun.fault, shop))
  redirect(`/stock/exchange/${encodeURIComponent(id)}`)
}

export async function submitCancel(_before: FormState, form: FormData): Promise<FormState> {
  await requireStep()
  const id = String(form.get('importId'))
  cancelImport(id)
  redirect(`/stock/exchange/${encodeURIComponent(id)}`)
}

export async function submitUndo(before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const id = String(form.get('importId'))
  const undone = await undoImport(step, id)
  if (!undone.ok) return refusedForm(before, { importId: id }, stepFaultText(undone.fault, shop))
  redirect(`/stock/exchange/${encodeURIComponent(id)}`)
}
