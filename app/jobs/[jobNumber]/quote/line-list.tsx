'use client'
/** Lines of one kind: added, moved and taken out by buttons that also work without JavaScript. */
import { rowsOf } from '@/app/_components/form/edit-rows'
import { CheckField, HiddenField, type Option, SelectField, TextField } from '@/app/_components/form/form-fields'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import styles from './quote.module.css'
import type { LineList as ListName } from './quote-schema'

type Amount = (row: string) => string

type Props = {
  readonly form: ActionForm
  readonly list: ListName
  readonly title: string
  readonly units: readonly string[]
  readonly currency: string
  readonly amountOf: Amount
  /** Said below a line that draws a part. */
  readonly noteOf?: (partId: string) => React.ReactNode
  readonly children: React.ReactNode
}

export function LineList({ form, list, title, units, currency, amountOf, noteOf, children }: Props) {
  const rows = rowsOf(form.state.values, list)
  const options = units.map((unit) => ({ value: unit, text: unit }))
  return (
    <fieldset>
      <legend>{title}</legend>
      <div className={styles.list}>
        {rows.length > 0 && (
          <Heads heads={['What it is for', 'Quantity', 'Unit', `Price, ${currency}`, 'Taxed', 'Amount', '']} />
        )}
        {rows.map((row, index) => (
          <Line
            // biome-ignore lint/suspicious/noArrayIndexKey: a row is known by its place in the form
            key={index}
            form={form}
            name={`${list}.${index}`}
            last={index === rows.length - 1}
            options={options}
            title={row.text || `${title} ${index + 1}`}
            amount={amountOf(`${list}.${index}`)}
            note={row.partId ? noteOf?.(row.partId) : undefined}
          />
        ))}
      </div>
      <div className={styles.add}>{children}</div>
    </fieldset>
  )
}

function Heads({ heads, tube }: { heads: readonly string[]; tube?: boolean }) {
  return (
    <div className={`${styles.line} ${styles.head} ${tube ? styles.tube : ''}`} aria-hidden="true">
      {heads.map((head, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: fixed heads
        <span key={index} className={head === 'Amount' ? 'num' : undefined}>
          {head}
        </span>
      ))}
    </div>
  )
}

type LineProps = {
  readonly form: ActionForm
  readonly name: string
  readonly last: boolean
  readonly title: string
  readonly amount: string
  readonly options: readonly Option[]
  readonly note: React.ReactNode
}

function Line({ form, name, last, title, amount, options, note }: LineProps) {
  return (
    <fieldset className={styles.line} aria-label={title}>
      <TextField form={form} name={`${name}.text`} label="What it is for" bare />
      <TextField form={form} name={`${name}.thousandths`} label="Quantity" numeric bare />
      <SelectField form={form} name={`${name}.unit`} label="Unit" options={options} bare />
      <TextField form={form} name={`${name}.unitPrice`} label="Unit price" numeric bare />
      <CheckField form={form} name={`${name}.taxable`} label="taxed" />
      <output className={styles.amount}>{amount}</output>
      <LineButtons name={name} last={last} title={title} />
      {note}
      <HiddenField form={form} name={`${name}.id`} />
      <HiddenField form={form} name={`${name}.partId`} />
    </fieldset>
  )
}

function LineButtons({ name, last, title }: { name: string; last: boolean; title: string }) {
  const at = name.replace('.', ':')
  return (
    <div className={styles.buttons}>
      <LineButton value={`up:${at}`} label={`Move up: ${title}`} off={at.endsWith(':0')}>
        ↑
      </LineButton>
      <LineButton value={`down:${at}`} label={`Move down: ${title}`} off={last}>
        ↓
      </LineButton>
      <LineButton value={`remove:${at}`} label={`Take out: ${title}`}>
        Take out
      </LineButton>
    </div>
  )
}

type ButtonProps = { readonly value: string; readonly label: string; readonly off?: boolean; readonly children: string }

function LineButton({ value, label, off, children }: ButtonProps) {
  return (
    <button
      type="submit"
      className="button plain nowrap"
      formNoValidate
      name="edit"
      value={value}
      aria-label={label}
      title={label}
      disabled={off}
    >
      {children}
    </button>
  )
}

type TubeProps = {
  readonly form: ActionForm
  readonly title: string
  readonly currency: string
  readonly amountOf: Amount
  readonly children: React.ReactNode
}

/** Which tubes is settled at the step before; here only their price is. */
export function TubeList({ form, title, currency, amountOf, children }: TubeProps) {
  const rows = rowsOf(form.state.values, 'tubes')
  return (
    <fieldset>
      <legend>{title}</legend>
      <div className={styles.list}>
        {rows.length > 0 && (
          <Heads tube heads={['Socket, type and mark', `Price, ${currency}`, 'Taxed', 'Amount', '']} />
        )}
        {rows.map((row, index) => {
          const name = `tubes.${index}`
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a row is known by its place in the form
            <fieldset key={index} className={`${styles.line} ${styles.tube}`} aria-label={row.text}>
              <span className={styles.what}>{row.text}</span>
              <TextField form={form} name={`${name}.unitPrice`} label="Price" numeric bare />
              <CheckField form={form} name={`${name}.taxable`} label="taxed" />
              <output className={styles.amount}>{amountOf(name)}</output>
              <LineButtons name={name} last={index === rows.length - 1} title={row.text ?? ''} />
              <HiddenField form={form} name={`${name}.id`} />
              <HiddenField form={form} name={`${name}.text`} />
            </fieldset>
          )
        })}
      </div>
      <div className={styles.add}>{children}</div>
    </fieldset>
  )
}
