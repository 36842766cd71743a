'use client'
/** The fields of every form: label, box, unit, hint and the sentence beside it. */
import { useId } from 'react'
import type { ActionForm } from './use-action-form'

type Common = {
  readonly form: ActionForm
  readonly name: string
  readonly label: string
  readonly hint?: string
  /** The label is read aloud but not drawn: for the cells of a table with headings. */
  readonly bare?: boolean
}

type NotesProps = Common & {
  readonly id: string
  /** A saved value as it is read, when the form holds a code for it. */
  readonly shown?: (value: string) => string
}

/** What stands below the box. */
function Notes({ form, name, hint, id, shown = (value) => value || 'left empty' }: NotesProps) {
  const fault = form.faultOf(name)
  const theirs = form.theirsOf(name)
  return (
    <>
      {hint && (
        <p className="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {fault && (
        <p className="field-fault" id={`${id}-fault`} role="alert">
          {fault}
        </p>
      )}
      {theirs !== undefined && (
        <p className="field-theirs" id={`${id}-theirs`}>
          Saved meanwhile: {shown(theirs)}
        </p>
      )}
    </>
  )
}

function Frame({ children, ...props }: NotesProps & { readonly children: React.ReactNode }) {
  const { form, name, label, bare, id } = props
  return (
    <div className={bare ? 'field field-bare' : 'field'} data-fault={form.faultOf(name) ? '' : undefined}>
      <label htmlFor={id} className={bare ? 'sr-only' : undefined}>
        {label}
      </label>
      {children}
      <Notes {...props} />
    </div>
  )
}

function described({ form, name, hint }: Common, id: string) {
  const fault = form.faultOf(name)
  const parts = [
    hint && `${id}-hint`,
    fault && `${id}-fault`,
    form.theirsOf(name) !== undefined && `${id}-theirs`,
  ].filter(Boolean)
  return { 'aria-invalid': fault ? true : undefined, 'aria-describedby': parts.length ? parts.join(' ') : undefined }
}

/** Without JavaScript a refused page opens at its first fault. */
const starts = (form: ActionForm, name: string, otherwise?: boolean) =>
  form.startAt === undefined ? otherwise : form.startAt === name

type TextProps = Common & {
  readonly unit?: string
  readonly lines?: number
  readonly type?: 'text' | 'email' | 'tel' | 'date' | 'password' | 'url'
  /** Opens the number pad on a tablet. */
  readonly numeric?: boolean
  readonly list?: string
  readonly autoComplete?: string
  readonly autoFocus?: boolean
  readonly placeholder?: string
}

export function TextField(props: TextProps) {
  const { form, name, unit, lines, type = 'text', numeric, list, autoComplete = 'off', autoFocus, placeholder } = props
  const id = useId()
  const shared = {
    id,
    autoComplete,
    placeholder,
    defaultValue: form.valueOf(name),
    autoFocus: starts(form, name, autoFocus),
    ...described(props, id),
    ...form.register(name),
  }
  return (
    <Frame {...props} id={id}>
      <div className="field-box">
        {lines ? (
          <textarea rows={lines} {...shared} />
        ) : (
          <input type={type} inputMode={numeric ? 'decimal' : undefined} list={list} {...shared} />
        )}
        {unit && <span className="field-unit">{unit}</span>}
      </div>
    </Frame>
  )
}

export type Option = { readonly value: string; readonly text: string }

export function SelectField(props: Common & { readonly options: readonly Option[]; readonly empty?: string }) {
  const { form, name, options, empty } = props
  const id = useId()
  const value = form.valueOf(name)
  const unlisted = value !== '' && !options.some((option) => option.value === value)
  const shown = (saved: string) =>
    options.find((option) => option.value === saved)?.text ?? (saved || empty || 'left empty')
  return (
    <Frame {...props} id={id} shown={shown}>
      <select
        id={id}
        defaultValue={value}
        data-start={value}
        {...{ autoFocus: starts(form, name) }}
        {...described(props, id)}
        {...form.register(name)}
      >
        {empty !== undefined && <option value="">{empty}</option>}
        {/* What is saved stays to be seen when the list no longer has it; the browser would show the first of the list. */}
        {unlisted && <option value={value}>{value}</option>}
        {options.map(({ value, text }) => (
          <option key={value} value={value}>
            {text}
          </option>
        ))}
      </select>
    </Frame>
  )
}

export function CheckField(props: Common) {
  const { form, name, label } = props
  const id = useId()
  return (
    <div className="field field-check" data-fault={form.faultOf(name) ? '' : undefined}>
      <label htmlFor={id}>
        {/* react-hook-form holds a lone checkbox as a boolean; the form itself sends "on". */}
        <input
          type="checkbox"
          id={id}
          name={name}
          value="on"
          defaultChecked={form.valueOf(name) === 'on'}
          {...described(props, id)}
        />
        <span>{label}</span>
      </label>
      <Notes {...props} id={id} shown={(saved) => (saved === 'on' ? 'ticked' : 'not ticked')} />
    </div>
  )
}

export function HiddenField({ form, name }: { readonly form: ActionForm; readonly name: string }) {
  return <input type="hidden" key={form.state.attempt} name={name} defaultValue={form.valueOf(name)} />
}

/**
 * Stands at the head of a form. Before it comes the button that Enter in a box
 * presses: that is the first of the form, and must not be one that takes a row
 * out.
 */
export function FormMessage({ form }: { readonly form: ActionForm }) {
  const { status, message } = form
  return (
    <>
      <button type="submit" className="sr-only" tabIndex={-1} aria-hidden="true">
        Save
      </button>
      {form.valueOf('once') !== '' && <HiddenField form={form} name="once" />}
      {message !== '' && (
        <p className="form-message" data-status={status} role={status === 'refused' ? 'alert' : 'status'} tabIndex={-1}>
          {message}
        </p>
      )}
    </>
  )
}

/** Head of a sheet that is kept under a version: which one it is, and what it started from. */
export function SheetHead({ form }: { readonly form: ActionForm }) {
  return (
    <>
      <FormMessage form={form} />
      <HiddenField form={form} name="id" />
      <HiddenField form={form} name="version" />
      <HiddenField form={form} name="base" />
    </>
  )
}

type SubmitProps = {
  readonly form: ActionForm
  readonly children: React.ReactNode
  readonly name?: string
  readonly value?: string
  readonly quiet?: boolean
}

/** Not disabled while saving: that would take the focus away. The form itself refuses a second press. */
export function SubmitButton({ form, children, name, value, quiet }: SubmitProps) {
  const saving = form.pending && form.pressed === (value ?? null)
  return (
    <button
      type="submit"
      className={quiet ? 'button quiet' : 'button'}
      aria-disabled={form.pending || undefined}
      name={name}
      value={value}
    >
      {saving ? 'Saving…' : children}
    </button>
  )
}
