'use server'
import { revalidatePath } from 'next/cache'
import { redirect } from 'next/navigation'
import { afterSave } from '@/app/_components/form/after-save'
import { editedForm } from '@/app/_components/form/edit-rows'
import { type FormState, refusedForm } from '@/app/_components/form/form-state'
import { typedValues } from '@/app/_components/form/form-values'
import { staleForm } from '@/app/_components/form/merge-typed'
import { readForm } from '@/app/_components/form/read-form'
import { minorDigits } from '@/lib/domain/money'
import { instantInZone } from '@/lib/domain/quote/answer'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { requireStep } from '@/lib/session'
import { findJob } from '@/lib/store/job'
import { findLatestQuote } from '@/lib/store/quote'
import { answerQuote } from '@/lib/workflow/quote/answer-quote'
import { beginQuote, keepQuote } from '@/lib/workflow/quote/keep-quote'
import { reissueQuoteMail } from '@/lib/workflow/quote/reissue-quote-mail'
import { reviseQuote } from '@/lib/workflow/quote/revise-quote'
import { sendQuote } from '@/lib/workflow/quote/send-quote'
import { undoAnswer } from '@/lib/workflow/quote/undo-answer'
import type { Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { answerSchema, answerToKeep } from './answer-schema'
import { editQuote } from './edit-quote'
import { quoteSchema, quoteValues } from './quote-schema'
import { writtenQuote } from './written-quote'

const rulesOf = ({ currency }: Shop) => ({ currency, digits: minorDigits(currency) })

/** The page, told what has just been done. */
function show(jobNumber: string, now: Date, did = ''): never {
  revalidatePath(`/jobs/${jobNumber}`, 'layout')
  redirect(`${afterSave(`/jobs/${jobNumber}/quote`, now)}${did && `&did=${did}`}`)
}

export async function submitQuote(jobNumber: string, before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const typed = typedValues(form)
  const edited = await editQuote(jobNumber, shop, typed)
  if (edited) return editedForm(before, edited)
  const read = readForm(quoteSchema(rulesOf(shop)), before, form)
  if (!read.ok) return read.state
  const written = writtenQuote(read.value)
  if (typed.edit === 'send:mail' || typed.edit === 'send:hand-over') {
    const way = typed.edit === 'send:mail' ? 'mail' : 'hand-over'
    const sent = await sendQuote(step, shop, { jobNumber, way, written })
    return sent.ok
      ? show(jobNumber, step.now, way)
      : refusedQuote(jobNumber, before, read.values, { shop, fault: sent.fault })
  }
  const kept = await keepQuote(step, shop, { jobNumber, written })
  return kept.ok
    ? show(jobNumber, step.now, 'kept')
    : refusedQuote(jobNumber, before, read.values, { shop, fault: kept.fault })
}

type Refused = { readonly shop: Shop; readonly fault: StepFault }

async function refusedQuote(
  jobNumber: string,
  before: FormState,
  typed: FormState['values'],
  { shop, fault }: Refused,
): Promise<FormState> {
  const sentence = stepFaultText(fault, shop)
  const job = fault.code === 'stale' ? await findJob(jobNumber) : null
  const quote = job && (await findLatestQuote(job.id))
  if (!job || quote?.state !== 'draft') return refusedForm(before, typed, sentence)
  return staleForm(before, typed, { current: quoteValues(quote, job.findings, minorDigits(shop.currency)), sentence })
}

export async function submitAnswer(jobNumber: string, before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const read = readForm(answerSchema(rulesOf(shop)), before, form)
  if (!read.ok) return read.state
  const { answer, day, minutes } = read.value
  if (answer === '') return refusedForm(before, read.values, 'Press the button for yes, or the one for no.')
  const at = instantInZone(day, minutes, shop.timeZone)
  const answered = await answerQuote(step, shop, answerToKeep(jobNumber, { ...read.value, answer }, at))
  return answered.ok
    ? show(jobNumber, step.now, answer)
    : refusedForm(before, read.values, stepFaultText(answered.fault, shop))
}

/** For a form of one button. */
async function settle(
  jobNumber: string,
  before: FormState,
  { step, shop, result, did }: { step: Step; shop: Shop; result: Result<unknown, StepFault>; did?: string },
) {
  return result.ok
    ? show(jobNumber, step.now, did)
    : refusedForm(before, before.values, stepFaultText(result.fault, shop))
}

export async function submitBegin(jobNumber: string, before: FormState): Promise<FormState> {
  const { step, shop } = await requireStep()
  return settle(jobNumber, before, { step, shop, result: await beginQuote(step, shop, jobNumber) })
}

export async function submitRevise(jobNumber: string, before: FormState): Promise<FormState> {
  const { step, shop } = await requireStep()
  return settle(jobNumber, before, { step, shop, result: await reviseQuote(step, shop, jobNumber) })
}

export async function submitReissue(jobNumber: string, before: FormState): Promise<FormState> {
  const { step, shop } = await requireStep()
  return settle(jobNumber, before, { step, shop, result: await reissueQuoteMail(step, shop, jobNumber), did: 'mail' })
}

export async function submitUndo(jobNumber: string, before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const version = Number(typedValues(form).version)
  return settle(jobNumber, before, {
    step,
    shop,
    result: await undoAnswer(step, shop, { jobNumber, version }),
    did: 'undone',
  })
}
