'use client'
/** What the customer said: who, how, when; yes or no by its own button. */
import { useMemo } from 'react'
import { FormMessage, HiddenField, SelectField, SubmitButton, TextField } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { type FormAction, useActionForm } from '@/app/_components/form/use-action-form'
import { PAYMENT_WAYS } from '@/lib/domain/job/account'
import { jobStateWord } from '@/lib/domain/job/job-state'
import { minorDigits } from '@/lib/domain/money'
import { AFTER_YES, ANSWER_WAYS } from '@/lib/domain/quote/answer'
import { answerSchema } from './answer-schema'

const same = (value: string) => ({ value, text: value })

type Props = {
  /** Bound to its job on the server. */
  readonly action: FormAction
  readonly values: FormValues
  readonly currency: string
  readonly total: string
  /** Empty: none is asked for. */
  readonly depositDue: string
}

export function AnswerForm({ action, values, currency, total, depositDue }: Props) {
  const schema = useMemo(() => answerSchema({ currency, digits: minorDigits(currency) }), [currency])
  const form = useActionForm(action, freshForm(values), schema)
  return (
    <form {...form.formProps} className="stack no-print">
      <FormMessage form={form} />
      <HiddenField form={form} name="version" />
      <div className="fields">
        <TextField form={form} name="by" label="Who answered" />
        <SelectField form={form} name="way" label="How" options={ANSWER_WAYS.map(same)} />
        <TextField
          form={form}
          name="detail"
          label="Number or address"
          hint="The number called, the address written from."
        />
        <TextField form={form} name="on" label="Answered on" type="date" />
        <TextField form={form} name="at" label="At" hint="24 hours, like 14:30." />
        <SelectField
          form={form}
          name="moveTo"
          label="After a yes the job goes to"
          options={AFTER_YES.map((state) => ({ value: state, text: jobStateWord(state) }))}
        />
        <TextField
          form={form}
          name="deposit"
          label="Deposit taken now"
          unit={currency}
          numeric
          hint={
            depositDue === ''
              ? 'None is asked for; leave empty.'
              : `${depositDue} is asked for. Leave empty when none was taken.`
          }
        />
        <SelectField
          form={form}
          name="depositHow"
          label="Deposit by"
          options={PAYMENT_WAYS.map(same)}
          empty="no deposit"
        />
      </div>
      <div className="row">
        <SubmitButton form={form} name="answer" value="accepted">
          Yes, {total} accepted
        </SubmitButton>
        <SubmitButton form={form} name="answer" value="declined" quiet>
          No, declined
        </SubmitButton>
      </div>
    </form>
  )
}
