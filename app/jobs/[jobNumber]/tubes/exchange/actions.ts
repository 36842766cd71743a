'use server'
import { revalidatePath } from 'next/cache'
import { redirect } from 'next/navigation'
import { type FormState, refusedForm } from '@/app/_components/form/form-state'
import { typedValues } from '@/app/_components/form/form-values'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import { matchStatement } from '@/lib/domain/matching/match-statement'
import { requireStep } from '@/lib/session'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { exchangeTube } from '@/lib/workflow/tubes/exchange-tube'
import { findHead } from '../../require-head'
import { readLimits } from '../limits-form'
import { exchangedAddress, readExchangeAsked } from './exchange-address'
import { comparedSets } from './reckoning/compared-sets'
import { exchangeView } from './reckoning/exchange-view'
import { lookedAt } from './reckoning/looked'
import { readSeen } from './reckoning/seen-exchange'

export async function submitExchange(jobNumber: string, before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const values = typedValues(form)
  const [seen, head] = [readSeen(values.seen), await findHead(jobNumber)]
  if (!seen || !head) return refusedForm(before, values, 'Look again: this page is not whole any more.')
  const limits = readLimits(values, shop)
  const asked = readExchangeAsked(values)
  const found = await exchangeView({ job: head.job, shop, asked, limits })
  if (!found.ok) return refusedForm(before, values, found.fault)
  const compared = await comparedSets(found.value)
  const looked = found.value.into && lookedAt(found.value, found.value.into, compared)
  const option = looked?.option ?? null
  const readOn = compared.limits.predictions?.readOn ?? null
  const exchanged = await exchangeTube(step, shop, {
    ...{ jobNumber, position: asked.position, ...seen },
    limits: { maximumTestAgeDays: limits.age, allowOverPrintedRating: limits.over },
    against: looked?.predicted.join(' '),
    match: option && matchStatement(option, USUAL_YARDSTICKS, readOn),
  })
  if (!exchanged.ok) return refusedForm(before, values, stepFaultText(exchanged.fault, shop))
  revalidatePath(`/jobs/${jobNumber}`, 'layout')
  redirect(exchangedAddress(jobNumber, asked, exchanged.value.out))
}
