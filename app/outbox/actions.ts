'use server'
import { revalidatePath } from 'next/cache'
import { type FormState, refusedForm, savedForm } from '@/app/_components/form/form-state'
import { requireStep } from '@/lib/session'
import {
  cancelWaitingMail,
  type MailOutcome,
  type MailRound,
  sendMailNow,
  sendWaitingMail,
} from '@/lib/workflow/quote/send-waiting-mail'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'

function outcomeForm(before: FormState, outcome: MailOutcome): FormState {
  switch (outcome.kind) {
    case 'sent':
      return savedForm(before, before.values, 'Sent.')
    case 'failed':
      return refusedForm(before, before.values, `Not sent. The server said: ${outcome.words}`)
    case 'waiting':
      return refusedForm(before, before.values, 'No mail server is set up, so it goes on waiting.')
    case 'not-ours':
      return refusedForm(before, before.values, 'It is being sent already.')
  }
}

export async function submitSendNow(mailId: string, before: FormState): Promise<FormState> {
  const { step, shop } = await requireStep()
  const sent = await sendMailNow(step, shop, mailId)
  revalidatePath('/outbox')
  return sent.ok ? outcomeForm(before, sent.value) : refusedForm(before, before.values, stepFaultText(sent.fault, shop))
}

export async function submitCancel(mailId: string, before: FormState): Promise<FormState> {
  const { step, shop } = await requireStep()
  const cancelled = await cancelWaitingMail(step, mailId)
  revalidatePath('/outbox')
  return cancelled.ok
    ? savedForm(before, before.values, 'Cancelled.')
    : refusedForm(before, before.values, stepFaultText(cancelled.fault, shop))
}

function roundText({ sent, failed, lastWords }: MailRound): string {
  if (sent + failed === 0) return 'Nothing was waiting.'
  return `${sent} sent, ${failed} not taken.${lastWords && ` The server said: ${lastWords}`}`
}

export async function submitSendAll(before: FormState): Promise<FormState> {
  const { step, shop } = await requireStep()
  const round = await sendWaitingMail(step, shop, { failedToo: true })
  revalidatePath('/outbox')
  const answer = round.failed > 0 ? refusedForm : savedForm
  return answer(before, before.values, roundText(round))
}
