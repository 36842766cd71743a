'use client'
/**
 * One form, with and without JavaScript. Before hydration the server's answer
 * is drawn from `state`; afterwards react-hook-form says when a field is to be
 * checked, and the boxes themselves hold what is typed.
 *
 * Every check reads the form as it would be sent, so that ticks, hidden fields
 * and rows count as they are and not as they were when the page was opened.
 */
import { startTransition, useActionState, useEffect, useId, useRef, useState } from 'react'
import { set, type UseFormRegister, useForm } from 'react-hook-form'
import type * as z from 'zod/mini'
import { earlyTexts, focusFirstOf, putBack, settleBoxes, showFormMessage } from './form-boxes'
import type { FormState, FormValues } from './form-state'
import { typedValues } from './form-values'
import { faultsMessage, readValues } from './read-form'
import { surviving } from './surviving-action'
import { useUnsavedWarning } from './use-unsaved-warning'

export type FormAction = (before: FormState, form: FormData) => Promise<FormState>

type Loose = Record<string, unknown>

export type ActionForm = {
  readonly state: FormState
  /** For the head of the form; the browser's own check has one too. */
  readonly message: string
  readonly status: FormState['status']
  readonly pending: boolean
  /** `value` of the button that was pressed last; null for the main one. */
  readonly pressed: string | null
  readonly dirty: boolean
  /** Field to start in after a refusal, while there is no JavaScript to go there. */
  readonly startAt: string | undefined
  readonly register: UseFormRegister<Loose>
  readonly faultOf: (name: string) => string | undefined
  readonly theirsOf: (name: string) => string | undefined
  readonly valueOf: (name: string) => string
  readonly setValue: (name: string, value: string) => void
  readonly formProps: {
    readonly id: string
    readonly ref: React.RefObject<HTMLFormElement | null>
    readonly action: (form: FormData) => void
    readonly onSubmit: (event: React.FormEvent<HTMLFormElement>) => void
    readonly noValidate: true
  }
}

function messageAt(errors: unknown, name: string): string | undefined {
  let at = errors
  for (const key of name.split('.')) at = (at as Loose | undefined)?.[key]
  const message = (at as { message?: unknown } | undefined)?.message
  return typeof message === 'string' ? message : undefined
}

function errorsByName(faults: Readonly<Record<string, string>>): Loose {
  const errors: Loose = {}
  for (const [name, message] of Object.entries(faults)) set(errors, name, { type: 'check', message })
  return errors
}

export function useActionForm(action: FormAction, initial: FormState, schema: z.ZodMiniType): ActionForm {
  const [state, send, pending] = useActionState(surviving(action), initial)
  const [hydrated, setHydrated] = useState(false)
  const [pressed, setPressed] = useState<string | null>(null)
  const [checkMessage, setCheckMessage] = useState('')
  const id = useId()
  const [early] = useState(() => earlyTexts(id))
  const ref = useRef<HTMLFormElement>(null)
  const sent = useRef<FormValues>(state.values)
  // A second press before the first is under way would save twice.
  const busy = useRef(false)

  function check() {
    const read = readValues(schema, ref.current ? typedValues(new FormData(ref.current)) : {})
    return read.ok ? {} : read.faults
  }

  const form = useForm<Loose>({
    mode: 'onTouched',
    // Rows come and go: a box that is gone must not give its text to the next of its name.
    shouldUnregister: true,
    shouldFocusError: false,
    // A sentence that appears while a button is being pressed would move the button away from under the finger.
    delayError: 300,
    resolver: () => {
      const faults = check()
      return Object.keys(faults).length === 0
        ? { values: {}, errors: {} }
        : { values: {}, errors: errorsByName(faults) as never }
    },
  })
  const { clearErrors, setError } = form
  const { errors } = form.formState

  useEffect(() => {
    setHydrated(true)
    if (ref.current) putBack(ref.current, early)
  }, [early])
  useEffect(() => {
    if (!pending) busy.current = false
  }, [pending])

  useEffect(() => {
    const element = ref.current
    if (state.attempt === 0 || !element) return
    settleBoxes(element, sent.current, state.values)
    setCheckMessage('')
    clearErrors()
    for (const [name, message] of Object.entries(state.faults)) setError(name, { type: 'server', message })
    const edit = /^add:(.+)$/.exec(sent.current.edit ?? '')
    if (edit && state.status === 'fresh') focusFirstOf(element, (name) => name.startsWith(`${edit[1]}.`), 'last-row')
    else if (!focusFirstOf(element, (name) => name in state.faults)) showFormMessage(element, state.status)
  }, [state, clearErrors, setError])

  // After the boxes are settled: it looks at them.
  const dirty = useUnsavedWarning(ref, state, busy)

  function setValue(name: string, value: string) {
    form.setValue(name, value, { shouldDirty: true, shouldValidate: false })
    ref.current?.dispatchEvent(new Event('input'))
  }

  function refuse() {
    const faults = check()
    busy.current = false
    setCheckMessage(faultsMessage(faults))
    if (ref.current && !focusFirstOf(ref.current, (name) => name in faults)) showFormMessage(ref.current, 'refused')
  }

  function submit(event: React.FormEvent<HTMLFormElement>) {
    event.preventDefault()
    if (busy.current) return
    busy.current = true
    const { submitter } = event.nativeEvent as SubmitEvent
    const element = event.currentTarget
    const proceed = () => {
      const data = new FormData(element, submitter)
      sent.current = typedValues(data)
      setPressed((submitter as HTMLButtonElement | null)?.value || null)
      setCheckMessage('')
      startTransition(() => send(data))
    }
    // A button marked so skips the check: taking a row out must not need a whole sheet.
    if (submitter?.hasAttribute('formnovalidate')) proceed()
    else void form.handleSubmit(proceed, refuse)(event)
  }

  return {
    state,
    message: checkMessage || state.message,
    status: checkMessage ? 'refused' : state.status,
    pending,
    pressed,
    dirty,
    startAt: hydrated ? undefined : Object.keys(state.faults)[0],
    register: form.register,
    faultOf: (name) => (hydrated ? messageAt(errors, name) : state.faults[name]),
    theirsOf: (name) => state.theirs[name],
    valueOf: (name) => state.values[name] ?? '',
    setValue,
    formProps: { id, ref, action: send, noValidate: true, onSubmit: submit },
  }
}

export type { FormValues }
