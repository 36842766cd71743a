'use server'
import { redirect } from 'next/navigation'
import type { FormState } from '@/app/_components/form/form-state'
import { requireStep, shopAddress } from '@/lib/session'
import { finishWork, tickLine } from '@/lib/workflow/work/do-work'
import { fitTube, takeTubeOut } from '@/lib/workflow/work/fit-tubes'
import { giveBackParts, type PartsLeftOver } from '@/lib/workflow/work/give-back-parts'
import { issueWorkOrder } from '@/lib/workflow/work/issue-work-order'
import { answerPress } from '../answer-press'

type Line = { readonly jobNumber: string; readonly lineId: string; readonly done: boolean }

export async function pressTick(line: Line, before: FormState, _form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  return answerPress(before, shop, line.jobNumber, await tickLine(step, line))
}

type Place = { readonly jobNumber: string; readonly position: string; readonly fitted: boolean }

export async function pressFitted(
  { jobNumber, position, fitted }: Place,
  before: FormState,
  _form: FormData,
): Promise<FormState> {
  const { step, shop } = await requireStep()
  const result = fitted ? await fitTube(step, jobNumber, position) : await takeTubeOut(step, jobNumber, position)
  return answerPress(before, shop, jobNumber, result)
}

export async function pressGiveBack(part: PartsLeftOver, before: FormState, _form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  return answerPress(before, shop, part.jobNumber, await giveBackParts(step, part))
}

export async function pressPrint(jobNumber: string, before: FormState, _form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const issued = await issueWorkOrder(step, shop, { jobNumber, address: await shopAddress() })
  const state = answerPress(before, shop, jobNumber, issued)
  if (issued.ok) redirect(`/papers/${issued.value}`)
  return state
}

export async function pressFinish(jobNumber: string, before: FormState, _form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const finished = await finishWork(step, jobNumber)
  const state = answerPress(before, shop, jobNumber, finished)
  if (finished.ok) redirect(`/jobs/${jobNumber}/safety`)
  return state
}
