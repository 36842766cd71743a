/** What the sheet's own buttons do: rows added, moved, taken out, or a usual line-up to start from. */
import { editRows, flatRows, rowsOf } from '@/app/_components/form/edit-rows'
import type { FormValues } from '@/app/_components/form/form-state'
import { plainSocket } from '@/lib/domain/amp/socket'
import { LAYOUT_NAMES, RECTIFIERS, usualLayout } from '@/lib/domain/amp/usual-layouts'
import { socketText } from './sheet-schema'

/** Null: no edit; the sheet is then meant to be kept. */
export function editSheet(values: FormValues, edit: string): FormValues | null {
  return (
    startWithLayout(values, edit) ??
    editRows(values, edit, () => socketText(plainSocket(nextPosition(values), 'preamp')))
  )
}

/** The lowest "V" number not on the sheet. */
function nextPosition(values: FormValues): string {
  const taken = new Set(rowsOf(values, 'sockets').map((row) => (row.position ?? '').trim().toUpperCase()))
  let number = 1
  while (taken.has(`V${number}`)) number += 1
  return `V${number}`
}

/** Only an empty sheet is filled: nothing typed is swept away. */
function startWithLayout(values: FormValues, edit: string): FormValues | null {
  const [what, wanted, choice] = edit.split(':')
  const name = LAYOUT_NAMES.find((each) => each === wanted)
  const rectifier = RECTIFIERS.find((each) => each === choice)
  if (what !== 'layout' || !name || !rectifier) return null
  if (rowsOf(values, 'sockets').length > 0) return values
  const { outputClass, sockets } = usualLayout(name, rectifier)
  const { edit: _edit, ...kept } = values
  return { ...kept, outputClass, ...flatRows('sockets', sockets.map(socketText)) }
}
