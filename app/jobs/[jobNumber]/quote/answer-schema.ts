/** The answer's form. Which of the two it is comes with the button that was pressed. */
import * as z from 'zod/mini'
import { after, amount, choice, day, optionalChoice, refuseAt, text, version } from '@/app/_components/form/fields'
import type { FormValues } from '@/app/_components/form/form-state'
import { type Day, dayInZone } from '@/lib/domain/calendar'
import { PAYMENT_WAYS } from '@/lib/domain/job/account'
import { AFTER_YES, ANSWER_WAYS, clockInZone, readClock } from '@/lib/domain/quote/answer'
import type { AnswerToKeep } from '@/lib/workflow/quote/answer-quote'
import type { MoneyRules } from './quote-schema'

export function answerSchema({ currency, digits }: MoneyRules) {
  return after(
    z.object({
      version: version(),
      answer: optionalChoice('Answer', ['accepted', 'declined']),
      by: text({ label: 'Who answered', required: true, max: 120 }),
      way: choice('How', ANSWER_WAYS),
      detail: text({ label: 'Number or address', max: 120 }),
      on: day({ label: 'Answered on', required: true }),
      at: text({ label: 'At', required: true, max: 5 }),
      moveTo: choice('After a yes the job goes to', AFTER_YES),
      deposit: amount({ label: 'Deposit taken now', currency, digits }),
      depositHow: optionalChoice('Deposit by', PAYMENT_WAYS),
    }),
    ({ on, at, ...rest }, context) => {
      const refuse = (path: string, message: string) => refuseAt(context, message, [path])
      const minutes = readClock(at)
      if (minutes === null) refuse('at', `At: “${at}” is no time. Write it like 14:30.`)
      if (rest.way === 'by phone' && rest.detail === '')
        refuse('detail', 'Number or address is empty. A yes by phone needs the number that was called.')
      if (rest.deposit !== null && rest.deposit > 0 && rest.depositHow === '')
        refuse('depositHow', 'Deposit by: nothing is chosen. Choose how it was paid.')
      return { ...rest, day: on as Day, minutes: minutes ?? 0 }
    },
  )
}

type AnswerTyped = z.output<ReturnType<typeof answerSchema>>

export function answerToKeep(
  jobNumber: string,
  typed: AnswerTyped & { readonly answer: 'accepted' | 'declined' },
  at: Date,
): AnswerToKeep {
  const { version: saved, by, way, detail, moveTo, deposit, depositHow } = typed
  const given = { jobNumber, version: saved, by, way, detail, at }
  if (typed.answer === 'declined') return { ...given, answer: 'declined' }
  const taken = deposit !== null && deposit > 0 ? { amount: deposit, how: depositHow } : null
  return { ...given, answer: 'accepted', moveTo, deposit: taken }
}

export type AnswerStart = {
  readonly version: number
  readonly customerName: string
  readonly phone: string
  readonly now: Date
  readonly zone: string
}

export function answerValues({ version: saved, customerName, phone, now, zone }: AnswerStart): FormValues {
  return {
    version: String(saved),
    by: customerName,
    way: phone === '' ? 'in person' : 'by phone',
    detail: phone,
    on: dayInZone(now, zone),
    at: clockInZone(now, zone),
    moveTo: 'on-bench',
    deposit: '',
    depositHow: '',
  }
}
