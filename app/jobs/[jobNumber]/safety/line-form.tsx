'use client'
/** One safety line to be filled in and signed with one of three buttons. */
import { useMemo } from 'react'
import {
  FormMessage,
  HiddenField,
  type Option,
  SelectField,
  SubmitButton,
  TextField,
} from '@/app/_components/form/form-fields'
import { freshForm } from '@/app/_components/form/form-state'
import { type FormAction, useActionForm } from '@/app/_components/form/use-action-form'
import type { Check } from '@/lib/domain/safety/check'
import { lineSchema } from './line-schema'
import styles from './safety.module.css'

type Props = {
  /** Bound by the page, not here: bound anew at every drawing it would never be ready on the server. */
  readonly action: FormAction
  readonly check: Check
  readonly instruments: readonly Option[]
  /** Of the line as it was signed; 0: not signed yet. */
  readonly version: number
  /** Signed already: the form is folded away behind these words. */
  readonly again: boolean
}

export function LineForm({ action, check, instruments, version, again }: Props) {
  const schema = useMemo(() => lineSchema(check), [check])
  const form = useActionForm(action, freshForm({ version: String(version) }), schema)
  const applies = check.doesNotApply === null
  const filled = (
    <form {...form.formProps} className="stack no-print" aria-label={check.name}>
      <FormMessage form={form} />
      <HiddenField form={form} name="version" />
      {applies && (
        <div className={styles.boxes}>
          {check.source.kind === 'typed' && (
            <TextField form={form} name="value" label={check.source.box.label} unit={check.source.box.unit} numeric />
          )}
          {check.source.kind === 'parts' &&
            check.source.parts.map(({ name, sheetOhms }, index) => (
              <TextField
                key={name}
                form={form}
                name={`parts.${index}.ohms`}
                label={name}
                unit="Ω"
                hint={`Sheet: ${sheetOhms} Ω`}
                numeric
              />
            ))}
          {check.detail && <TextField form={form} name="detail" label={check.detail.label} hint={check.detail.hint} />}
          {check.instrument !== 'none' && (
            <SelectField
              form={form}
              name="instrumentId"
              label="Instrument"
              options={instruments}
              empty={check.instrument === 'needed' ? 'choose' : 'none'}
            />
          )}
          <TextField
            form={form}
            name="reason"
            label={check.source.kind === 'readings' ? 'Why, in a word' : 'Why not, if it fails or is not tested'}
          />
        </div>
      )}
      <div className="row">
        {applies && (
          <>
            <SubmitButton form={form} name="outcome" value="pass">
              Pass
            </SubmitButton>
            <SubmitButton form={form} name="outcome" value="fail" quiet>
              Fail
            </SubmitButton>
          </>
        )}
        <SubmitButton form={form} name="outcome" value="not-tested" quiet>
          {applies ? 'Not tested' : 'Sign as not tested'}
        </SubmitButton>
      </div>
    </form>
  )
  if (!again) return filled
  return (
    <details open={form.status === 'refused' || undefined} className="no-print">
      <summary className="button plain">Sign again…</summary>
      {filled}
    </details>
  )
}
