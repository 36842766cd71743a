'use server'
import { revalidatePath } from 'next/cache'
import { redirect } from 'next/navigation'
import { afterSave } from '@/app/_components/form/after-save'
import { editedForm, editRows } from '@/app/_components/form/edit-rows'
import { type FormState, refusedForm } from '@/app/_components/form/form-state'
import { typedValues } from '@/app/_components/form/form-values'
import { staleForm } from '@/app/_components/form/merge-typed'
import { readForm } from '@/app/_components/form/read-form'
import { isJobState } from '@/lib/domain/job/job-state'
import { requireStep } from '@/lib/session'
import { findJob } from '@/lib/store/job'
import { keepJob, moveJobByHand } from '@/lib/workflow/counter/keep-job'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { BLANK_ITEM, jobSchema, jobValues } from '../job-schema'

export async function submitJob(before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const typed = typedValues(form)
  const edited = editRows(typed, typed.edit ?? '', () => BLANK_ITEM)
  if (edited) return editedForm(before, edited)
  const read = readForm(jobSchema(shop.currency), before, form)
  if (!read.ok) return read.state
  const { number, version, ...intake } = read.value
  const kept = await keepJob(step, shop, { number, version, intake })
  if (kept.ok) {
    revalidatePath(`/jobs/${number}`, 'layout')
    redirect(afterSave(`/jobs/${number}`, step.now))
  }
  const sentence = stepFaultText(kept.fault, shop)
  const job = kept.fault.code === 'stale' ? await findJob(number) : null
  if (!job) return refusedForm(before, read.values, sentence)
  return staleForm(before, read.values, { current: jobValues(job, shop.currency), sentence })
}

export async function submitMove(number: string, before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const typed = typedValues(form)
  const to = typed.to ?? ''
  if (!isJobState(to))
    return refusedForm(before, typed, 'Choose where the job stands now.', { to: 'Nothing is chosen.' })
  const moved = await moveJobByHand(step, number, Number(typed.version), to)
  if (!moved.ok) return refusedForm(before, typed, stepFaultText(moved.fault, shop))
  revalidatePath(`/jobs/${number}`, 'layout')
  redirect(afterSave(`/jobs/${number}`, step.now))
}
