'use server'
import { revalidatePath } from 'next/cache'
import { redirect } from 'next/navigation'
import { type FormState, refusedForm, savedForm } from '@/app/_components/form/form-state'
import { readForm } from '@/app/_components/form/read-form'
import { dayInZone } from '@/lib/domain/calendar'
import { asRead } from '@/lib/domain/matching/carried-test'
import { matchStatement } from '@/lib/domain/matching/match-statement'
import { amps, ratio } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import { planningRun, startPlanning } from '@/lib/planning/planning-run'
import type { PlannedSet } from '@/lib/planning/sharing/share-plan'
import { requireStep } from '@/lib/session'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { acceptShare, type SharedSet } from '@/lib/workflow/tubes/accept-share'
import { endedShare } from './ended-share'
import { shareOrderOf } from './share-order-of'
import { shareSchema, ticked } from './share-schema'
import { listWaitingJobs } from './waiting-jobs'

export async function startShare(before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const read = readForm(shareSchema(shop.currency, wordsFor(shop.words)), before, form)
  if (!read.ok) return read.state
  const { age, milliamps, percent, cap, over, one } = read.value
  const ticks = ticked(read.values)
  const jobs = (await listWaitingJobs(shop)).filter(({ line, against }) => against === null && ticks.has(line.number))
  if (jobs.length === 0) return refusedForm(before, read.values, 'No job is ticked. Tick those that want a set.')
  const limits = {
    maximumTestAgeDays: age,
    allowOverPrintedRating: over,
    priceCap: cap,
    oneDesignation: one,
    yardsticks: { plateCurrent: amps(milliamps), transconductance: ratio(percent) },
    asOf: dayInZone(step.now, shop.timeZone),
  }
  const { id } = startPlanning('share', await shareOrderOf(jobs, limits, { shop, now: step.now }))
  redirect(`/share-out/${id}`)
}

export async function cancelShare(id: string): Promise<void> {
  await requireStep()
  planningRun(id)?.cancel()
  redirect(`/share-out/${id}`)
}

/** `before` comes last: the first two are bound where the button stands. */
export async function submitAccept(id: string, jobNumber: string, before: FormState): Promise<FormState> {
  const { step, shop } = await requireStep()
  const ended = await endedShare(id)
  const job = ended?.ok ? ended.value.jobs.find((each) => each.jobNumber === jobNumber) : undefined
  if (!ended?.ok || !job?.sets || !job.basis)
    return refusedForm(before, {}, 'This sharing is no longer at hand. Share out again, and accept from the new one.')
  const { yardsticks } = ended.value.limits
  const sets = job.sets.map((set): SharedSet => sharedSet(set, yardsticks))
  const accepted = await acceptShare(step, shop, { jobNumber, basis: job.basis, sets })
  if (!accepted.ok) return refusedForm(before, {}, stepFaultText(accepted.fault, shop))
  revalidatePath(`/jobs/${jobNumber}`, 'layout')
  revalidatePath(`/share-out/${id}`)
  return savedForm(before, {}, '')
}

const sharedSet = (
  { group, option, readOn }: PlannedSet,
  yardsticks: Parameters<typeof matchStatement>[1],
): SharedSet => ({
  group,
  match: matchStatement(option, yardsticks, readOn),
  tubes: option.tubes.map(({ candidate, side }) => ({
    tubeId: candidate.tubeId,
    mark: candidate.mark,
    side,
    test: asRead(candidate.test),
    price: candidate.price,
  })),
})
