import 'server-only'
import { revalidatePath } from 'next/cache'
import { type FormState, refusedForm, savedForm } from '@/app/_components/form/form-state'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'

/** The answer to a single button: the page is drawn anew in its place, or the sentence stands beside the button. */
export function answerPress(
  before: FormState,
  shop: Shop,
  jobNumber: string,
  result: Result<unknown, StepFault>,
): FormState {
  if (!result.ok) return refusedForm(before, {}, stepFaultText(result.fault, shop))
  revalidatePath(`/jobs/${jobNumber}`, 'layout')
  return savedForm(before, {}, '')
}
