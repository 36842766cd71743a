'use server'
import { revalidatePath } from 'next/cache'
import { redirect } from 'next/navigation'
import { type FormState, refusedForm, savedForm } from '@/app/_components/form/form-state'
import { typedValues } from '@/app/_components/form/form-values'
import { dayInZone } from '@/lib/domain/calendar'
import { planningRun, startPlanning } from '@/lib/planning/planning-run'
import { requireStep } from '@/lib/session'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { keepSets } from '@/lib/workflow/stock/keep-sets'
import { endedSets } from './ended-sets'
import { setName } from './set-name'
import { readSetsLimits } from './sets-limits'
import { listCohorts, spreadRuleOf } from './shelf-stock'

/** For quads; the gap that is left is shown. */
const SECONDS = 60

/** The cohort by its key: what is in it is looked up anew. */
export async function makeSets(form: FormData): Promise<void> {
  const { step, shop } = await requireStep()
  const values = typedValues(form)
  const limits = readSetsLimits(values, shop)
  const back = `/stock/sets?${new URLSearchParams(limits.typed)}`
  if (limits.faults.size > 0) redirect(back)
  const cohort = (await listCohorts({ shop, now: step.now, limits })).find(({ key }) => key === values.cohort)
  if (!cohort) redirect(back)
  const size = values.size === '4' ? 4 : 2
  const asOf = dayInZone(step.now, shop.timeZone)
  const { id } = startPlanning('sets', { size, cohort, rule: spreadRuleOf(limits), asOf, seconds: SECONDS })
  redirect(`/stock/sets/${id}`)
}

export async function cancelSets(id: string): Promise<void> {
  await requireStep()
  planningRun(id)?.cancel()
  redirect(`/stock/sets/${id}`)
}

/** Every set under a name of its own. */
export async function keepAsSets(id: string, before: FormState): Promise<FormState> {
  const { step, shop } = await requireStep()
  const ended = await endedSets(id)
  if (!ended?.ok)
    return refusedForm(before, {}, 'These sets are no longer at hand. Make them again, and keep the new ones.')
  const { sets, order, family } = ended.value
  const kept = await keepSets(
    step,
    sets.map(({ tubes }) => ({ name: setName(order.size, family, tubes), tubes })),
  )
  if (!kept.ok) return refusedForm(before, {}, stepFaultText(kept.fault, shop))
  revalidatePath('/stock', 'layout')
  return savedForm(before, {}, `Kept: ${kept.value} sets, each under its name on every one of its labels and pages.`)
}
