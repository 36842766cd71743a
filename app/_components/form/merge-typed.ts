/**
 * Two people, one sheet: a three-way merge by field name.
 *
 * `base` is what the form showed when it was opened, `typed` what is in it now,
 * `theirs` what a colleague has saved meanwhile. A field not touched here takes
 * the saved value; a field touched by both keeps what was typed and the saved
 * value is told beside it.
 *
 * Of a list of rows touched by both, rows are matched by their ".id": what a
 * colleague added joins the end; what a colleague took out goes here too when
 * nothing was changed in it, else it stays as a new row. Where only one of both
 * moved rows, they stand as moved; where both did, as moved here. Rows without
 * ids are matched by their place, as long as none went.
 */
import { flatRows, type RowValues, rowsOf } from './edit-rows'
import { type FormState, type FormValues, refusedForm } from './form-state'

export type Merged = { readonly values: FormValues; readonly theirs: Readonly<Record<string, string>> }

type Draft = { readonly values: Record<string, string>; readonly told: Record<string, string> }

const BOOKKEEPING = new Set(['version', 'base', 'edit'])
const ROW_FIELD = /^([^.]+)\.\d+\./

export function mergeTyped(base: FormValues, typed: FormValues, theirs: FormValues): Merged {
  const draft: Draft = { values: { ...typed }, told: {} }
  const names = namesOf(base, theirs, typed)
  const plain = names.filter((name) => !ROW_FIELD.test(name) && !BOOKKEEPING.has(name))
  for (const name of plain) mergeField(draft, name, base, typed, theirs)
  const lists = new Set(names.flatMap((name) => ROW_FIELD.exec(name)?.[1] ?? []))
  for (const list of lists) mergeList(draft, list, base, typed, theirs)
  return { values: draft.values, theirs: draft.told }
}

const namesOf = (...sheets: readonly FormValues[]) => [...new Set(sheets.flatMap((sheet) => Object.keys(sheet)))]

/** A missing value is an empty one: an unticked box sends nothing. */
const same = (a: FormValues, b: FormValues, name: string) => (a[name] ?? '') === (b[name] ?? '')

function mergeField(draft: Draft, name: string, base: FormValues, typed: FormValues, theirs: FormValues): void {
  if (same(base, theirs, name) || same(typed, theirs, name)) return
  if (same(base, typed, name)) draft.values[name] = theirs[name] ?? ''
  else draft.told[name] = theirs[name] ?? ''
}

function mergeList(draft: Draft, list: string, base: FormValues, typed: FormValues, theirs: FormValues): void {
  const rows = { was: rowsOf(base, list), here: rowsOf(typed, list), there: rowsOf(theirs, list) }
  if (sameRows(rows.was, rows.there)) return
  if (sameRows(rows.was, rows.here)) takeRows(draft, list, rows.there)
  else if ([...rows.was, ...rows.there].some(({ id }) => id)) mergeById(draft, list, rows)
  else mergeByPlace(draft, list, rows)
}

type ThreeRows = Readonly<Record<'was' | 'here' | 'there', readonly RowValues[]>>

const sameRow = (a: RowValues, b: RowValues) => namesOf(a, b).every((name) => same(a, b, name))

const sameRows = (a: readonly RowValues[], b: readonly RowValues[]) =>
  a.length === b.length && a.every((row, place) => sameRow(row, b[place] ?? {}))

const withId = (rows: readonly RowValues[], id: string) => (id === '' ? undefined : rows.find((row) => row.id === id))

function takeRows({ values }: Draft, list: string, rows: readonly RowValues[]): void {
  for (const name of Object.keys(values)) if (ROW_FIELD.exec(name)?.[1] === list) delete values[name]
  Object.assign(values, flatRows(list, rows))
}

function mergeById(draft: Draft, list: string, { was, here, there }: ThreeRows): void {
  const rows: RowValues[] = []
  for (const row of inOrder({ was, here, there })) {
    const id = row.id ?? ''
    const [old, saved] = [withId(was, id), withId(there, id)]
    if (saved) rows.push(mergeRow(draft, `${list}.${rows.length}`, { was: old ?? {}, here: row, there: saved }))
    else if (!old) rows.push(row)
    else if (!sameRow(old, row)) rows.push({ ...row, id: '' })
  }
  const added = there.filter(({ id = '' }) => id !== '' && !withId(was, id) && !withId(here, id))
  takeRows(draft, list, [...rows, ...added])
}

/** Rows of here: those known to all three change places among themselves when only the colleague moved them. */
function inOrder({ was, here, there }: ThreeRows): readonly RowValues[] {
  const known = (rows: readonly RowValues[]) =>
    rows.filter(({ id = '' }) => withId(was, id) && withId(here, id) && withId(there, id))
  const [old, mine] = [known(was), known(here)]
  if (!old.every(({ id }, place) => id === mine[place]?.id)) return here
  const places = known(there).map(({ id = '' }) => withId(here, id))
  return here.map((row) => (mine.includes(row) ? (places.shift() ?? row) : row))
}

function mergeByPlace(draft: Draft, list: string, { was, here, there }: ThreeRows): void {
  if (was.length !== there.length || here.length < was.length) return
  const rows = here.map((row, place) => {
    const [old, saved] = [was[place], there[place]]
    return old && saved ? mergeRow(draft, `${list}.${place}`, { was: old, here: row, there: saved }) : row
  })
  takeRows(draft, list, rows)
}

function mergeRow(
  draft: Draft,
  at: string,
  { was, here, there }: Readonly<Record<keyof ThreeRows, RowValues>>,
): RowValues {
  const row: Draft = { values: { ...here }, told: {} }
  for (const name of namesOf(was, there)) mergeField(row, name, was, here, there)
  for (const [name, saved] of Object.entries(row.told)) draft.told[`${at}.${name}`] = saved
  return row.values
}

export type StaleSave = {
  /** Values of the sheet as saved now, from the same function that filled the form. */
  readonly current: FormValues
  /** Who, when and what, ready to read. */
  readonly sentence: string
}

/** The base travels in the form itself, so that this works without JavaScript too. */
export function staleForm(before: FormState, typed: FormValues, stale: StaleSave): FormState {
  const base = readBase(typed.base) ?? before.values
  const merged = mergeTyped(base, typed, stale.current)
  const message = `Not saved yet. ${stale.sentence} Your entries are kept below; look at them and save again.`
  const values = {
    ...merged.values,
    version: stale.current.version ?? '',
    base: JSON.stringify(withoutBase(stale.current)),
  }
  return { ...refusedForm(before, values, message), theirs: merged.theirs }
}

export const withoutBase = ({ base: _base, ...values }: FormValues): FormValues => values

/** Null unless it is what sheetValues wrote: text by name. */
export function readBase(written: string | undefined): FormValues | null {
  try {
    const value: unknown = JSON.parse(written ?? '')
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return null
    return Object.values(value).every((each) => typeof each === 'string') ? (value as FormValues) : null
  } catch {
    return null
  }
}
