/**
 * Sentences for values that break the schema. Each names the place, the value and the
 * bound; a missing box is never read as zero.
 */
import type { z } from 'zod'
import { type InputFault, pathText, shownValue } from './input-fault'

type Issue = z.core.$ZodIssue

function valueAt(input: unknown, path: readonly PropertyKey[]): unknown {
  let value = input
  for (const step of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step)) return undefined
    value = (value as Record<PropertyKey, unknown>)[step]
  }
  return value
}

const KINDS: Readonly<Record<string, string>> = {
  object: 'an object',
  record: 'an object',
  array: 'a list',
  string: 'text in double quotes',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
}
const kindText = (expected: string): string => KINDS[expected] ?? expected

const choiceText = (values: readonly unknown[]): string => values.map((one) => JSON.stringify(one)).join(', ')

type Size = Extract<Issue, { code: 'too_small' | 'too_big' }>

function boundText({ origin, inclusive, ...issue }: Size): string {
  const verb = origin === 'string' || origin === 'array' ? 'have' : 'be'
  if (issue.code === 'too_small') return `${verb} ${inclusive ? 'at least' : 'above'} ${issue.minimum}`
  return `${verb} ${inclusive ? 'at most' : 'below'} ${issue.maximum}`
}

/** What stands there is said with its length where the length is what is wrong. */
function measured(value: unknown, origin: string): string {
  return origin === 'string' ? `${shownValue(value)}, ${String(value).length} characters` : shownValue(value)
}

type Said = { readonly code: string; readonly must: string; readonly found?: string }

function said(issue: Issue, value: unknown): Said {
  switch (issue.code) {
    case 'invalid_type':
      return { code: 'wrong-type', must: `be ${kindText(issue.expected)}` }
    case 'too_small':
    case 'too_big':
      return { code: 'out-of-bounds', must: boundText(issue), found: measured(value, issue.origin) }
    case 'invalid_value':
      return { code: 'not-a-choice', must: `be one of ${choiceText(issue.values)}` }
    case 'invalid_union':
      return { code: 'not-a-choice', must: `be one of ${choiceText('options' in issue ? (issue.options ?? []) : [])}` }
    default:
      return { code: 'not-valid', must: `be as --schema says (${issue.message})` }
  }
}

function issueFaults(issue: Issue, input: unknown): InputFault[] {
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => {
      const path = pathText([...issue.path, key])
      const value = shownValue(valueAt(input, [...issue.path, key]))
      return { code: 'unknown-key', path, sentence: `${path} (${value}) is no key here; --schema lists them all.` }
    })
  }
  const path = pathText(issue.path)
  const value = valueAt(input, issue.path)
  const { code, must, found } = said(issue, value)
  if (value === undefined) return [{ code: 'missing', path, sentence: `${path} is missing; it must ${must}.` }]
  const name = path === '' ? 'The input' : path
  return [{ code, path, sentence: `${name} is ${found ?? shownValue(value)}; it must ${must}.` }]
}

export const schemaFaults = (error: z.ZodError, input: unknown): InputFault[] =>
  error.issues.flatMap((issue) => issueFaults(issue, input))
