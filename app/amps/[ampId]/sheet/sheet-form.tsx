'use client'
import { rowsOf } from '@/app/_components/form/edit-rows'
import { FormMessage, HiddenField, SelectField, SubmitButton } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { useActionForm } from '@/app/_components/form/use-action-form'
import type { SocketBase } from '@/lib/domain/amp/chassis-layout'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import type { Words } from '@/lib/domain/words'
import { submitSheet } from './actions'
import { LayoutChoices } from './layout-choices'
import styles from './sheet.module.css'
import { SheetPlaces } from './sheet-places'
import { sheetSchema } from './sheet-schema'
import { SocketBlock } from './socket-block'
import { TypeList } from './type-field'

export type SheetFormProps = {
  readonly values: FormValues
  readonly title: string
  readonly words: Words
  readonly catalogue: TubeCatalogue
  readonly designations: readonly string[]
  /** Of the types the list offers and those on the sheet. */
  readonly bases: Readonly<Record<string, SocketBase>>
}

const OUTPUT_OPTIONS = [
  { value: 'push-pull', text: 'push-pull' },
  { value: 'single-ended', text: 'single-ended' },
]

export function SheetForm({ values, title, words, designations, bases, catalogue }: SheetFormProps) {
  const form = useActionForm(submitSheet, freshForm(values), sheetSchema)
  const rows = rowsOf(form.state.values, 'sockets')
  return (
    <form {...form.formProps} className={`stack ${styles.sheet}`}>
      <FormMessage form={form} />
      {['ampId', 'version', 'base'].map((name) => (
        <HiddenField key={name} form={form} name={name} />
      ))}
      <TypeList designations={designations} />
      <div className="panel stack">
        <div className={styles.stage}>
          <SelectField form={form} name="outputClass" label="Output stage" options={OUTPUT_OPTIONS} />
        </div>
        {rows.length === 0 && <LayoutChoices words={words} />}
        {rows.map((_row, index) => (
          <SocketBlock
            // biome-ignore lint/suspicious/noArrayIndexKey: the boxes are named by their place
            key={index}
            form={form}
            index={index}
            last={index === rows.length - 1}
            words={words}
            catalogue={catalogue}
          />
        ))}
        <div className="row">
          <button type="submit" className="button quiet" formNoValidate name="edit" value="add:sockets">
            Add a socket
          </button>
          <SubmitButton form={form}>Save the sheet</SubmitButton>
        </div>
      </div>
      {rows.length > 0 && (
        <SheetPlaces key={form.state.attempt} rows={rows} title={title} words={words} bases={bases} />
      )}
      {rows.length > 0 && (
        <div className="row">
          <SubmitButton form={form}>Save the sheet</SubmitButton>
        </div>
      )}
    </form>
  )
}
