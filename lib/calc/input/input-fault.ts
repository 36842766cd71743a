/** What is wrong with an input: a code for programs, a place in it, and a sentence for people. */
export type InputFault = {
  readonly code: string
  /** "sockets[0].plateVolts"; empty for the input as a whole. */
  readonly path: string
  readonly sentence: string
  /** Only for text that is no JSON, both from 1. */
  readonly line?: number
  readonly column?: number
}

const PLAIN_KEY = /^[A-Za-z_$][\w$]*$/

export function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text}[${step}]`
    const key = String(step)
    if (!PLAIN_KEY.test(key)) return `${text}[${JSON.stringify(key)}]`
    return text === '' ? key : `${text}.${key}`
  }, '')
}

const LONGEST_SHOWN = 60

/** A value as it stood in the input, cut where it would fill the screen. */
export function shownValue(value: unknown): string {
  if (Array.isArray(value)) return `a list of ${value.length}`
  if (typeof value === 'object' && value !== null) return 'an object'
  // JSON has no infinity of its own: 1e999 becomes one when it is read.
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : 'too large for a number'
  const text = JSON.stringify(value) ?? 'nothing'
  return text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN)}…` : text
}
