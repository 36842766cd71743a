'use server'
import { revalidatePath } from 'next/cache'
import { redirect } from 'next/navigation'
import { type FormState, type FormValues, refusedForm, savedForm } from '@/app/_components/form/form-state'
import { readForm } from '@/app/_components/form/read-form'
import type { CheckId } from '@/lib/domain/safety/check'
import { safetyChecks } from '@/lib/domain/safety/safety-checks'
import { faultyBox } from '@/lib/domain/safety/safety-fault'
import { wordsFor } from '@/lib/domain/words'
import { requireStep } from '@/lib/session'
import { findAmpSheet } from '@/lib/store/amp'
import { listSafetyLines } from '@/lib/store/safety'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { releaseJob } from '@/lib/workflow/work/release-job'
import { signSafetyLine } from '@/lib/workflow/work/sign-safety-line'
import { answerPress } from '../answer-press'
import { findHead } from '../require-head'
import { lineSchema } from './line-schema'

type Line = { readonly jobNumber: string; readonly checkId: CheckId }

export async function submitLine({ jobNumber, checkId }: Line, before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const head = await findHead(jobNumber)
  const sheet = head && (await findAmpSheet(head.amp.id))
  const check = sheet && safetyChecks(sheet, shop, wordsFor(shop.words)).find(({ id }) => id === checkId)
  if (!check) return refusedForm(before, {}, 'This safety line is not there. Load the page again.')
  const read = readForm(lineSchema(check), before, form)
  if (!read.ok) return read.state
  const { version, outcome, parts, ...entry } = read.value
  const refused = (fault: StepFault) => {
    const sentence = stepFaultText(fault, shop)
    const box = boxOf(fault)
    return box
      ? refusedForm(before, read.values, 'Not signed: one box needs another look.', { [box]: sentence })
      : refusedForm(before, read.values, `Not signed. ${sentence}`)
  }
  if (outcome === '') return refused({ code: 'outcome-missing' })
  const measured = { ...entry, outcome, parts: parts.map(({ ohms }) => ohms) }
  const signed = await signSafetyLine(step, shop, { jobNumber, check: checkId, version, entry: measured })
  if (!signed.ok && signed.fault.code !== 'stale') return refused(signed.fault)
  revalidatePath(`/jobs/${jobNumber}`, 'layout')
  if (signed.ok) return savedForm(before, emptied(read.values, version + 1), '')
  const there = (await listSafetyLines(head.job.id)).find(({ check }) => check === checkId)
  return refusedForm(
    before,
    { ...read.values, version: String(there?.version ?? 0) },
    `Not signed. ${stepFaultText(signed.fault, shop)} Look at it; what you press now signs over it.`,
  )
}

/** The line's boxes for whoever signs it next. */
const emptied = (values: FormValues, version: number): FormValues => ({
  ...Object.fromEntries(Object.keys(values).map((name) => [name, ''])),
  version: String(version),
})

const BOXES: readonly string[] = [
  'value-missing',
  'limit-broken',
  'detail-missing',
  'fuse-differs',
  'instrument-missing',
  'reason-missing',
  'idle-uncertain',
]

const boxOf = (fault: StepFault) =>
  BOXES.includes(fault.code) ? faultyBox(fault as Parameters<typeof faultyBox>[0]) : null

export async function pressRelease(jobNumber: string, before: FormState, _form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const released = await releaseJob(step, shop, jobNumber)
  const state = answerPress(before, shop, jobNumber, released)
  if (released.ok) redirect(`/jobs/${jobNumber}/pickup`)
  return state
}
