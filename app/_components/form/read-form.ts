/** From a submitted form to domain values, or to the form again with its sentences. */
import type * as z from 'zod/mini'
import { type FormState, type FormValues, refusedForm } from './form-state'
import { nestedValues, typedValues } from './form-values'

export type FormFaults = Readonly<Record<string, string>>

export type ReadForm<T> =
  | { readonly ok: true; readonly value: T; readonly values: FormValues }
  | { readonly ok: false; readonly state: FormState }

export type ReadValues<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly faults: FormFaults }

/** The same reading on the server and, while typing, in the browser. One sentence by field name. */
export function readValues<Schema extends z.ZodMiniType>(
  schema: Schema,
  values: FormValues,
): ReadValues<z.output<Schema>> {
  const parsed = schema.safeParse(nestedValues(values))
  if (parsed.success) return { ok: true, value: parsed.data }
  const faults: Record<string, string> = {}
  for (const issue of parsed.error.issues) faults[issue.path.join('.')] ??= issue.message
  return { ok: false, faults }
}

/** For the head of the form, where a fault far below cannot be seen. */
export function faultsMessage(faults: FormFaults): string {
  const count = Object.keys(faults).length
  const fields = count === 1 ? 'one field needs' : `${count} fields need`
  return `Not saved: ${fields} another look. ${Object.values(faults)[0]}`
}

export function readForm<Schema extends z.ZodMiniType>(
  schema: Schema,
  before: FormState,
  form: FormData,
): ReadForm<z.output<Schema>> {
  const values = typedValues(form)
  const read = readValues(schema, values)
  if (read.ok) return { ok: true, value: read.value, values }
  const refused = refusedForm(before, values, faultsMessage(read.faults), read.faults)
  // What a colleague saved stays beside the fields until this sheet is saved.
  return { ok: false, state: { ...refused, theirs: before.theirs } }
}
