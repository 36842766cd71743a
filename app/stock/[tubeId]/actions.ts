'use server'
import { redirect } from 'next/navigation'
import { afterSave } from '@/app/_components/form/after-save'
import { type FormState, refusedForm } from '@/app/_components/form/form-state'
import { typedValues } from '@/app/_components/form/form-values'
import { staleForm } from '@/app/_components/form/merge-typed'
import { readForm } from '@/app/_components/form/read-form'
import { requireStep } from '@/lib/session'
import { findTube } from '@/lib/store/tube'
import { keepFittingHours } from '@/lib/workflow/bench/keep-fitting-hours'
import type { Step } from '@/lib/workflow/step/step'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { addTubeTest } from '@/lib/workflow/stock/add-tube-test'
import { removePhoto } from '@/lib/workflow/stock/keep-photo'
import { keepTube } from '@/lib/workflow/stock/keep-tube'
import { moveTube } from '@/lib/workflow/stock/move-tube'
import { furtherOf } from '../further-schema'
import { withPrices } from '../look-up-prices'
import { refusedTubes } from '../refused-tubes'
import { testEntryOf } from '../test-schema'
import { stockKit, tubeSchema, tubeValues } from '../tube-schema'
import { addTestSchema, hoursSchema, moveSchema, photoSchema } from './tube-page-schema'

/** The page keys its forms by this address: they start anew after a save, and only then. */
const sheetAfter = (id: string, { now }: Step): string => afterSave(`/stock/${id}`, now)

export async function submitTube(before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const typed = typedValues(form)
  const asked = await withPrices(before, typed, shop, { tubeId: typed.id ?? null })
  if (asked) return asked
  const kit = stockKit(shop)
  const read = readForm(tubeSchema(kit), before, form)
  if (!read.ok) return read.state
  const { id, version, mark, designation, condition, acquired, construction, location, cost, price, ...rest } =
    read.value
  const details = { mark, designation, condition, acquired, construction, location, cost, price }
  const kept = await keepTube(step, { id, version, details, further: furtherOf(rest), test: null })
  if (kept.ok) redirect(sheetAfter(id, step))
  const current = kept.fault.code === 'stale' ? await findTube(id) : null
  if (!current) return refusedTubes(before, read.values, kept.fault, shop)
  return staleForm(before, read.values, {
    current: tubeValues(current, kit),
    sentence: stepFaultText(kept.fault, shop),
  })
}

export async function submitTest(before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const read = readForm(addTestSchema(shop.words), before, form)
  if (!read.ok) return read.state
  const { tubeId, reject, ...typed } = read.value
  const added = await addTubeTest(step, { tubeId, test: testEntryOf(typed), reject })
  if (!added.ok) return refusedTubes(before, read.values, added.fault, shop)
  redirect(`${sheetAfter(tubeId, step)}&tested=${step.now.getTime()}`)
}

export async function submitMove(before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const read = readForm(moveSchema, before, form)
  if (!read.ok) return read.state
  const moved = await moveTube(step, read.value)
  if (!moved.ok) return refusedForm(before, read.values, stepFaultText(moved.fault, shop))
  redirect(sheetAfter(moved.value, step))
}

export async function submitHours(before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const read = readForm(hoursSchema, before, form)
  if (!read.ok) return read.state
  const kept = await keepFittingHours(step, read.value)
  if (!kept.ok) return refusedForm(before, read.values, stepFaultText(kept.fault, shop))
  redirect(sheetAfter(kept.value, step))
}

export async function submitPhotoRemoval(before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const read = readForm(photoSchema, before, form)
  if (!read.ok) return read.state
  const removed = await removePhoto(step, read.value.photoId)
  if (!removed.ok) return refusedForm(before, read.values, stepFaultText(removed.fault, shop))
  redirect(sheetAfter(removed.value, step))
}
