'use server'
import { revalidatePath } from 'next/cache'
import { redirect } from 'next/navigation'
import { type FormState, type FormValues, refusedForm, savedForm } from '@/app/_components/form/form-state'
import { readForm } from '@/app/_components/form/read-form'
import type { Shop } from '@/lib/domain/shop/shop'
import { type GuardedStep, requireStep } from '@/lib/session'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { recordSheetLine } from '@/lib/workflow/stock/record-sheet-line'
import { refusedTubes } from '../../refused-tubes'
import { sectionsOf } from '../../test-schema'
import { blankLine, isMarkOnly, lineSchema, withShort } from './line-schema'

const LOOK = 'Type what was read, or s when a short was found.'

export async function submitLine(before: FormState, form: FormData): Promise<FormState> {
  const guarded = await requireStep()
  const read = readForm(lineSchema(guarded.shop.words), before, form)
  if (!read.ok) return read.state
  const values = withShort(read.values)
  if (isMarkOnly(values))
    return refusedForm(before, values, `${values.mark}: nothing is written down yet. ${LOOK}`, { plateMilliamps: LOOK })
  return writeLine(guarded, before, read.value, values)
}

type Typed = Extract<ReturnType<ReturnType<typeof lineSchema>['safeParse']>, { success: true }>['data']

async function writeLine({ step, shop }: GuardedStep, before: FormState, typed: Typed, values: FormValues) {
  const { sheetId, corrects, offered, mark, takeIn, shorts, leakage, gas, noise, microphony, testNote, ...readings } =
    typed
  const reading = { ...{ shorts, leakage, gas, noise, microphony }, note: testNote, sections: sectionsOf(readings) }
  const meant = takeIn || (offered !== '' && offered === mark)
  const written = await recordSheetLine(step, { sheetId, mark, reading, takeIn: meant, corrects: corrects || null })
  if (!written.ok) return refusedLine(before, values, written.fault, shop)
  revalidatePath(`/stock/test-sheet/${sheetId}`)
  const blank = blankLine(sheetId, takeIn ? 'on' : '')
  const told = `${written.value.mark} written down${written.value.isNew ? ', taken into stock as a new one' : ''}.`
  if (corrects) redirect(`/stock/test-sheet/${sheetId}`)
  return savedForm(before, blank, told)
}

/** The sentence stands beside the mark where it is about the mark; Enter once more then takes an unknown one in. */
function refusedLine(before: FormState, values: FormValues, fault: StepFault, shop: Shop): FormState {
  if (!fault.code.startsWith('sheet-')) return refusedTubes(before, { ...values, offered: '' }, fault, shop)
  const sentence = stepFaultText(fault, shop)
  const offered = fault.code === 'sheet-mark-unknown' ? (values.mark ?? '').trim() : ''
  return refusedForm(before, { ...values, offered }, sentence, { mark: sentence })
}
