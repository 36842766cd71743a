/**
 * Two people, one sheet: rows are matched by their socket, not by their place,
 * since either may have added, moved or taken out sockets meanwhile.
 *
 * A socket that a colleague added joins the end of what is typed. One that a
 * colleague took out goes here too when nothing was changed in it, else it is
 * kept as a new one. One taken out here stays out. Rows of both sides then
 * stand in the order typed here, and the usual merge compares them box by box.
 */
import * as z from 'zod/mini'
import { flatRows, type RowValues, rowsOf } from '@/app/_components/form/edit-rows'
import type { FormState, FormValues } from '@/app/_components/form/form-state'
import { type StaleSave, staleForm, withoutBase } from '@/app/_components/form/merge-typed'

const LIST = 'sockets'
/** Stands where the other side has no such socket. */
const NO_ROW: RowValues = { id: '' }

const idOf = (row: RowValues): string => row.id ?? ''

const withoutRows = (values: FormValues): FormValues =>
  Object.fromEntries(Object.entries(values).filter(([name]) => !name.startsWith(`${LIST}.`)))

const rowsById = (values: FormValues): ReadonlyMap<string, RowValues> =>
  new Map(rowsOf(values, LIST).map((row) => [idOf(row), row]))

const isSameRow = (one: RowValues, other: RowValues | undefined): boolean =>
  other !== undefined && Object.keys({ ...one, ...other }).every((key) => (one[key] ?? '') === (other[key] ?? ''))

/** What is typed, with the rows a colleague added or took out. */
function joinedRows(base: FormValues, typed: FormValues, current: FormValues): RowValues[] {
  const [opened, saved] = [rowsById(base), rowsById(current)]
  const kept = rowsOf(typed, LIST).flatMap((row): RowValues[] => {
    if (idOf(row) === '' || saved.has(idOf(row))) return [row]
    return isSameRow(row, opened.get(idOf(row))) ? [] : [{ ...row, id: '' }]
  })
  return [...kept, ...rowsOf(current, LIST).filter((row) => !opened.has(idOf(row)))]
}

function inOrderOf(order: readonly RowValues[], values: FormValues, found: ReadonlyMap<string, RowValues>): FormValues {
  return {
    ...withoutRows(values),
    ...flatRows(
      LIST,
      order.map((row) => found.get(idOf(row)) ?? NO_ROW),
    ),
  }
}

export function staleSheet(before: FormState, typed: FormValues, { current, sentence }: StaleSave): FormState {
  const base = openedWith(typed) ?? before.values
  const rows = joinedRows(base, typed, current)
  const saved = rowsById(current)
  // A row the colleague added counts as opened like that: nothing in it differs.
  const opened = new Map([...saved, ...rowsById(base)])
  const alignedBase = JSON.stringify(inOrderOf(rows, base, opened))
  const alignedTyped = { ...withoutRows(typed), ...flatRows(LIST, rows), base: alignedBase }
  const state = staleForm(before, alignedTyped, { current: inOrderOf(rows, current, saved), sentence })
  return { ...state, values: { ...state.values, base: JSON.stringify(withoutBase(current)) } }
}

const written = z.record(z.string(), z.string())

/** What the form showed when it was opened; it travels in the form itself. */
function openedWith(typed: FormValues): FormValues | null {
  try {
    return written.parse(JSON.parse(typed.base ?? ''))
  } catch {
    return null
  }
}
