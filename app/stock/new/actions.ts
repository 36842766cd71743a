'use server'
import { redirect } from 'next/navigation'
import type { FormState } from '@/app/_components/form/form-state'
import { typedValues } from '@/app/_components/form/form-values'
import { once } from '@/app/_components/form/once'
import { readForm } from '@/app/_components/form/read-form'
import { isTestGiven } from '@/lib/domain/stock/test-entry'
import { type GuardedStep, requireStep } from '@/lib/session'
import { keepTube } from '@/lib/workflow/stock/keep-tube'
import { furtherOf } from '../further-schema'
import { withPrices } from '../look-up-prices'
import { refusedTubes } from '../refused-tubes'
import { testEntryOf } from '../test-schema'
import { stockKit } from '../tube-schema'
import { newTubeSchema } from './new-tube-schema'

export async function submitNewTube(before: FormState, form: FormData): Promise<FormState> {
  const guarded = await requireStep()
  return once(guarded.step.actor.id, form, () => takeTube(guarded, before, form))
}

async function takeTube({ step, shop }: GuardedStep, before: FormState, form: FormData): Promise<FormState> {
  const asked = await withPrices(before, typedValues(form), shop)
  if (asked) return asked
  const read = readForm(newTubeSchema(stockKit(shop)), before, form)
  if (!read.ok) return read.state
  const { mark, designation, condition, acquired, construction, location, cost, price, ...typed } = read.value
  const entry = testEntryOf(typed)
  const details = { mark, designation, condition, acquired, construction, location, cost, price }
  const test = isTestGiven(entry) ? entry : null
  const kept = await keepTube(step, { id: null, version: 0, details, further: furtherOf(typed), test })
  if (kept.ok) redirect(`/stock/${kept.value}`)
  return refusedTubes(before, read.values, kept.fault, shop)
}
