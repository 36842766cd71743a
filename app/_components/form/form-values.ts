/** Between the flat names of a form and the nested object a schema reads. */
import type { FormValues } from './form-state'

/** No sheet has more rows than this; a larger index comes from no form of ours. */
export const MOST_ROWS = 500

const NAME = /^[A-Za-z][\w-]*(\.[\w-]+)*$/
// Names by which an object's own machinery could be reached.
const FORBIDDEN = new Set(['__proto__', 'prototype', 'constructor'])

function isFieldName(name: string): boolean {
  if (!NAME.test(name)) return false
  return name.split('.').every((key) => !FORBIDDEN.has(key) && !(/^\d+$/.test(key) && Number(key) >= MOST_ROWS))
}

/**
 * Typed text by name. Files, the framework's own fields and names no form of
 * ours has are left out. A line break is one character, as it is in the box:
 * browsers send two.
 */
export function typedValues(form: FormData): FormValues {
  const values: Record<string, string> = {}
  for (const [name, value] of form)
    if (typeof value === 'string' && isFieldName(name)) values[name] = value.replace(/\r\n?/g, '\n')
  return values
}

type Nested = { [key: string]: string | Nested }

/** "sockets.0.role" becomes { sockets: [{ role }] }; rows keep their order. */
export function nestedValues(values: FormValues): unknown {
  const root: Nested = {}
  for (const [name, value] of Object.entries(values)) {
    if (!isFieldName(name)) continue
    const path = name.split('.')
    let at = root
    for (const key of path.slice(0, -1)) {
      const next = at[key]
      const child: Nested = typeof next === 'object' ? next : {}
      at[key] = child
      at = child
    }
    at[path[path.length - 1] as string] = value
  }
  return withArrays(root)
}

function withArrays(node: string | Nested): unknown {
  if (typeof node === 'string') return node
  const keys = Object.keys(node)
  if (keys.length > 0 && keys.every((key) => /^\d+$/.test(key))) {
    // A row that was taken out leaves a hole: undefined keeps the later rows' names true.
    const rows: unknown[] = new Array(Math.max(...keys.map(Number)) + 1).fill(undefined)
    for (const key of keys) rows[Number(key)] = withArrays(node[key] as string | Nested)
    return rows
  }
  return Object.fromEntries(keys.map((key) => [key, withArrays(node[key] as string | Nested)]))
}
