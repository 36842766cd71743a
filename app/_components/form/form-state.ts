/**
 * What a form holds between two submits. Every value is the text that was
 * typed, by field name ("sockets.2.cathodeOhms"), so that nothing is lost.
 */
export type FormValues = Readonly<Record<string, string>>

export type FormState = {
  readonly status: 'fresh' | 'saved' | 'refused'
  /** Counts answers, so that the page notices a second refusal with the same text. */
  readonly attempt: number
  readonly message: string
  readonly values: FormValues
  /** One sentence by field name. */
  readonly faults: Readonly<Record<string, string>>
  /** What a colleague saved meanwhile, by field name; shown beside the field. */
  readonly theirs: Readonly<Record<string, string>>
}

export const freshForm = (values: FormValues): FormState => ({
  status: 'fresh',
  attempt: 0,
  message: '',
  values,
  faults: {},
  theirs: {},
})

export const refusedForm = (
  before: FormState,
  values: FormValues,
  message: string,
  faults: Readonly<Record<string, string>> = {},
): FormState => ({ status: 'refused', attempt: before.attempt + 1, message, values, faults, theirs: {} })

export const savedForm = (before: FormState, values: FormValues, message: string): FormState => ({
  status: 'saved',
  attempt: before.attempt + 1,
  message,
  values,
  faults: {},
  theirs: {},
})

/** Values of a sheet that two people may edit: the form carries what it started from. */
export const sheetValues = (values: FormValues): FormValues => ({ ...values, base: JSON.stringify(values) })
