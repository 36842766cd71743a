'use server'
import { revalidatePath } from 'next/cache'
import { redirect } from 'next/navigation'
import { type FormState, type FormValues, refusedForm, savedForm } from '@/app/_components/form/form-state'
import { once } from '@/app/_components/form/once'
import { readForm } from '@/app/_components/form/read-form'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { requireStep } from '@/lib/session'
import { giveBackItem } from '@/lib/workflow/counter/give-back-item'
import { handOver } from '@/lib/workflow/handover/hand-over'
import { returnUnrepaired } from '@/lib/workflow/handover/return-unrepaired'
import { takeBackHandOver } from '@/lib/workflow/handover/take-back-hand-over'
import { takePayment } from '@/lib/workflow/handover/take-payment'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { answerPress } from '../answer-press'
import { handOverSchema, paymentSchema, returnSchema, takeBackSchema } from './pickup-schema'

type Item = { readonly jobNumber: string; readonly itemId: string; readonly returned: boolean }

export async function pressItem(item: Item, before: FormState, _form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  return answerPress(before, shop, item.jobNumber, await giveBackItem(step, item))
}

type Payment = { readonly jobNumber: string; readonly back: boolean }

export async function submitPayment(
  { jobNumber, back }: Payment,
  before: FormState,
  form: FormData,
): Promise<FormState> {
  const { step, shop } = await requireStep()
  return once(step.actor.id, form, async () => {
    const read = readForm(paymentSchema(shop.currency), before, form)
    if (!read.ok) return read.state
    const taken = await takePayment(step, shop, { jobNumber, back, ...read.value })
    if (!taken.ok) return refusedAt(before, read.values, taken.fault, shop)
    revalidatePath(`/jobs/${jobNumber}`, 'layout')
    return savedForm(before, {}, '')
  })
}

export async function submitHandOver(jobNumber: string, before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const read = readForm(handOverSchema, before, form)
  if (!read.ok) return read.state
  const { who, name, identity, ...notes } = read.value
  const collector = { name, identity, isOwner: who === 'owner' }
  return openSheet(jobNumber, before, read.values, await handOver(step, shop, { jobNumber, collector, ...notes }), shop)
}

export async function submitReturn(jobNumber: string, before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const read = readForm(returnSchema(shop.currency), before, form)
  if (!read.ok) return read.state
  const { who, name, identity, ...rest } = read.value
  const collector = { name, identity, isOwner: who === 'owner' }
  return openSheet(
    jobNumber,
    before,
    read.values,
    await returnUnrepaired(step, shop, { jobNumber, collector, ...rest }),
    shop,
  )
}

export async function submitTakeBack(jobNumber: string, before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const read = readForm(takeBackSchema, before, form)
  if (!read.ok) return read.state
  const taken = await takeBackHandOver(step, { jobNumber, ...read.value })
  if (!taken.ok) return refusedAt(before, read.values, taken.fault, shop)
  revalidatePath(`/jobs/${jobNumber}`, 'layout')
  redirect(`/jobs/${jobNumber}/pickup`)
}

/** The frozen sheet opens by itself: it is to be signed now. */
function openSheet(
  jobNumber: string,
  before: FormState,
  values: FormValues,
  closed: Result<string, StepFault>,
  shop: Shop,
): FormState {
  if (!closed.ok) return refusedAt(before, values, closed.fault, shop)
  revalidatePath(`/jobs/${jobNumber}`, 'layout')
  redirect(`/papers/${closed.value}`)
}

const BOXES: Partial<Record<StepFault['code'], string>> = {
  overpaid: 'amount',
  'refund-too-high': 'amount',
  'no-amount': 'amount',
  'items-left': 'itemsNote',
  'balance-open': 'owesNote',
  'balance-over': 'owesNote',
  'collector-missing': 'name',
  'identity-missing': 'identity',
  'return-reason-missing': 'reason',
  'take-back-reason-missing': 'reason',
  'way-missing': 'how',
}

function refusedAt(before: FormState, values: FormValues, fault: StepFault, shop: Shop): FormState {
  const sentence = stepFaultText(fault, shop)
  const box = BOXES[fault.code]
  return box
    ? refusedForm(before, values, 'Not saved: one box needs another look.', { [box]: sentence })
    : refusedForm(before, values, sentence)
}
