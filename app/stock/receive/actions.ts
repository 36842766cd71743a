'use server'
import { revalidatePath } from 'next/cache'
import { editedForm, editRows, flatRows, type RowValues, rowsOf } from '@/app/_components/form/edit-rows'
import { type FormState, refusedForm, savedForm } from '@/app/_components/form/form-state'
import { typedValues } from '@/app/_components/form/form-values'
import { once, onceMark } from '@/app/_components/form/once'
import { readForm } from '@/app/_components/form/read-form'
import { wordsFor } from '@/lib/domain/words'
import { type GuardedStep, requireStep } from '@/lib/session'
import { receiveTubes } from '@/lib/workflow/stock/receive-tubes'
import { furtherOf } from '../further-schema'
import { withPrices } from '../look-up-prices'
import { refusedTubes } from '../refused-tubes'
import { sectionsOf, settingOf } from '../test-schema'
import { stockKit } from '../tube-schema'
import { BLANK_ROW, nextDelivery, receiveSchema } from './receive-schema'

const isBlank = ({ shorts = '', ...row }: RowValues) =>
  shorts === '' && Object.values(row).every((typed) => typed.trim() === '')

/** A row left wholly empty is no tube; what is numbered and told as at fault is what then remains. */
function withoutBlankRows(form: FormData): FormData {
  const values = typedValues(form)
  const filled = rowsOf(values, 'rows').filter((row) => !isBlank(row))
  const tidy = new FormData()
  const shared = Object.entries(values).filter(([name]) => !name.startsWith('rows.'))
  for (const [name, value] of [...shared, ...Object.entries(flatRows('rows', filled))]) tidy.set(name, value)
  return tidy
}

export async function submitDelivery(before: FormState, form: FormData): Promise<FormState> {
  const guarded = await requireStep()
  return once(guarded.step.actor.id, form, () => takeDelivery(guarded, before, form))
}

async function takeDelivery({ step, shop }: GuardedStep, before: FormState, form: FormData): Promise<FormState> {
  const typed = typedValues(form)
  const edited = editRows(typed, typed.edit ?? '', nextRow)
  if (edited) return editedForm(before, edited)
  const asked = await withPrices(before, typed, shop)
  if (asked) return asked
  const read = readForm(receiveSchema(stockKit(shop)), before, withoutBlankRows(form))
  if (!read.ok) return read.state
  const { designation, condition, acquired, construction, location, cost, price } = read.value
  const details = { designation, condition, acquired, construction, location, cost, price }
  const rows = read.value.rows.map(({ mark, shorts, ...readings }) => ({
    mark,
    shorts,
    sections: sectionsOf(readings),
  }))
  const untested = read.value.untested ?? 0
  if (rows.length + untested === 0) return refusedForm(before, typed, NOTHING_THERE)
  const further = furtherOf(read.value)
  const received = await receiveTubes(step, { details, further, setting: settingOf(read.value), rows, untested })
  if (!received.ok) return refusedTubes(before, read.values, received.fault, shop)
  revalidatePath('/stock')
  return savedForm(
    before,
    { ...nextDelivery(typed), once: onceMark() },
    receivedText(received.value, designation, wordsFor(shop.words)),
  )
}

const NOTHING_THERE = 'Not saved: no row is filled in. Type a mark or a reading, or say how many came untested.'

const nextRow = (): RowValues => BLANK_ROW

type Named = { readonly mark: string }

/** The marks are told in full: they now go onto the glass. */
function receivedText(
  received: readonly Named[],
  designation: string,
  words: { readonly tube: string; readonly tubes: string },
): string {
  const noun = received.length === 1 ? words.tube : words.tubes
  return `${received.length} ${noun} of type ${designation} taken in: ${received.map(({ mark }) => mark).join(', ')}.`
}
