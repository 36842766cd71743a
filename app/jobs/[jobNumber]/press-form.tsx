'use client'
/** A form that is one button, with its refusal beside it. */
import * as z from 'zod/mini'
import { SubmitButton } from '@/app/_components/form/form-fields'
import { freshForm } from '@/app/_components/form/form-state'
import { type FormAction, useActionForm } from '@/app/_components/form/use-action-form'

const NOTHING = z.object({})

type Props = { readonly action: FormAction; readonly quiet?: boolean; readonly children: React.ReactNode }

export function PressForm({ action, quiet, children }: Props) {
  const form = useActionForm(action, freshForm({}), NOTHING)
  return (
    <form {...form.formProps} className="no-print">
      <SubmitButton form={form} quiet={quiet}>
        {children}
      </SubmitButton>
      {form.message !== '' && (
        <p className="form-message" data-status={form.status} role="alert" tabIndex={-1}>
          {form.message}
        </p>
      )}
    </form>
  )
}
