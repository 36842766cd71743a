'use server'
import { redirect } from 'next/navigation'
import { editedForm, editRows } from '@/app/_components/form/edit-rows'
import { type FormState, refusedForm } from '@/app/_components/form/form-state'
import { typedValues } from '@/app/_components/form/form-values'
import { once } from '@/app/_components/form/once'
import { faultsMessage, readForm } from '@/app/_components/form/read-form'
import { type Day, dayInZone, daysBetween } from '@/lib/domain/calendar'
import { type GuardedStep, requireStep, shopAddress } from '@/lib/session'
import { takeInJob } from '@/lib/workflow/counter/take-in-job'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { BLANK_ITEM } from '../job-schema'
import { intakeSchema } from './intake-schema'

export async function submitIntake(before: FormState, form: FormData): Promise<FormState> {
  const guarded = await requireStep()
  return once(guarded.step.actor.id, form, () => takeIn(guarded, before, form))
}

async function takeIn({ step, shop }: GuardedStep, before: FormState, form: FormData): Promise<FormState> {
  const typed = typedValues(form)
  const edited = editRows(typed, typed.edit ?? '', () => BLANK_ITEM)
  if (edited) return editedForm(before, edited)
  const newCustomer = (typed.customerId ?? '') === ''
  const newAmp = (typed.ampId ?? '') === ''
  const read = readForm(intakeSchema({ newCustomer, newAmp, currency: shop.currency }), before, form)
  if (!read.ok) return read.state
  const { customerId, ampId, customer, amp, ...intake } = read.value
  const past = pastPromise(intake.promisedOn, dayInZone(step.now, shop.timeZone))
  if (past !== '') return refusedForm(before, read.values, faultsMessage({ promisedOn: past }), { promisedOn: past })
  const taken = await takeInJob(step, shop, {
    customer: customer ? { details: customer } : { id: customerId },
    amp: amp ? { details: amp } : { id: ampId },
    intake,
    address: await shopAddress(),
  })
  if (!taken.ok) return refusedForm(before, read.values, stepFaultText(taken.fault, shop))
  redirect(`/jobs/${taken.value.number}?taken=in`)
}

/** A new promise is for today or later. One that has passed since may stand in the entries. */
const pastPromise = (promised: Day | null, today: Day): string =>
  promised !== null && daysBetween(today, promised) < 0
    ? `Promised: ${promised} lies in the past. Choose today or a later day, or leave it empty.`
    : ''
