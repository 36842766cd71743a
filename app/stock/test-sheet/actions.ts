'use server'
import { redirect } from 'next/navigation'
import type { FormState } from '@/app/_components/form/form-state'
import { readForm } from '@/app/_components/form/read-form'
import { requireStep } from '@/lib/session'
import { startTestSheet } from '@/lib/workflow/stock/start-test-sheet'
import { refusedTubes } from '../refused-tubes'
import { stockKit } from '../tube-schema'
import { newSheetOf, startSheetSchema } from './start-schema'

export async function submitStart(before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const read = readForm(startSheetSchema(stockKit(shop)), before, form)
  if (!read.ok) return read.state
  const started = await startTestSheet(step, newSheetOf(read.value))
  if (!started.ok) return refusedTubes(before, read.values, started.fault, shop)
  redirect(`/stock/test-sheet/${started.value}`)
}
