/**
 * Adding, removing and moving rows of a form by its own submit buttons, so
 * that the same thing works with and without JavaScript. An edit is
 * "add:sockets", "remove:sockets:3", "up:sockets:3" or "down:sockets:3".
 */
import type { FormState, FormValues } from './form-state'
import { MOST_ROWS } from './form-values'

const EDIT = /^(add|remove|up|down):([A-Za-z]+)(?::(\d+))?$/

export type RowValues = Readonly<Record<string, string>>

/** Null when `edit` is no edit of rows: the form is then meant to be saved. */
export function editRows(values: FormValues, edit: string, blank: (list: string) => RowValues): FormValues | null {
  const parts = EDIT.exec(edit)
  if (!parts) return null
  const [, what, list = '', at] = parts
  const rows = rowsOf(values, list)
  if (what === 'add' && rows.length >= MOST_ROWS) return values
  const index = at === undefined ? rows.length : Number(at)
  const kept = Object.fromEntries(
    Object.entries(values).filter(([name]) => !name.startsWith(`${list}.`) && name !== 'edit'),
  )
  return { ...kept, ...flatRows(list, editedRows(rows, what as string, index, blank(list))) }
}

function editedRows(rows: readonly RowValues[], what: string, index: number, blank: RowValues): RowValues[] {
  if (what === 'add') return [...rows, blank]
  if (what === 'remove') return rows.filter((_, place) => place !== index)
  const to = what === 'up' ? index - 1 : index + 1
  const [here, there] = [rows[index], rows[to]]
  return here && there ? rows.with(index, there).with(to, here) : [...rows]
}

/** Rows in their order, holes closed. */
export function rowsOf(values: FormValues, list: string): RowValues[] {
  const rows = new Map<number, Record<string, string>>()
  for (const [name, value] of Object.entries(values)) {
    const [head, index, ...rest] = name.split('.')
    if (head !== list || index === undefined || !/^\d+$/.test(index) || rest.length === 0) continue
    const row = rows.get(Number(index)) ?? {}
    row[rest.join('.')] = value
    rows.set(Number(index), row)
  }
  return [...rows.entries()].sort(([a], [b]) => a - b).map(([, row]) => row)
}

export function flatRows(list: string, rows: readonly RowValues[]): FormValues {
  return Object.fromEntries(
    rows.flatMap((row, index) => Object.entries(row).map(([key, value]) => [`${list}.${index}.${key}`, value])),
  )
}

export const editedForm = (before: FormState, values: FormValues): FormState => ({
  status: 'fresh',
  attempt: before.attempt + 1,
  message: '',
  values,
  faults: {},
  theirs: {},
})
