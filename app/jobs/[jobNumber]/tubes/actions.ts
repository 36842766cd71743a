'use server'
import { revalidatePath } from 'next/cache'
import { redirect } from 'next/navigation'
import { type FormState, refusedForm } from '@/app/_components/form/form-state'
import { typedValues } from '@/app/_components/form/form-values'
import { socketsFor } from '@/lib/domain/bench/group-demand'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import { matchStatement } from '@/lib/domain/matching/match-statement'
import { wordsFor } from '@/lib/domain/words'
import { requireStep } from '@/lib/session'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { chooseTubes, dropTubes } from '@/lib/workflow/tubes/choose-tubes'
import { choiceChanges } from '@/lib/workflow/tubes/seen-choice'
import { latestBench } from '../latest-bench'
import { findHead } from '../require-head'
import { proposeForGroup, shownSets } from './group-proposal'
import { readLimits } from './limits-form'
import { readSeenSet } from './seen-set'

export async function submitChoice(jobNumber: string, before: FormState, form: FormData): Promise<FormState> {
  const { step, shop } = await requireStep()
  const values = typedValues(form)
  const { tubes: tubesWord } = wordsFor(shop.words)
  const gone = refusedForm(
    before,
    values,
    `This set can no longer be had as shown: a reading, a limit or one of its ${tubesWord} changed. Look again and choose anew.`,
  )
  const [head, seen] = [await findHead(jobNumber), readSeenSet(values.seen)]
  if (!head || !seen) return gone
  const { job } = head
  const group = values.group ?? ''
  const asked = await proposeForGroup({
    group,
    bench: await latestBench(job, shop),
    job,
    shop,
    limits: readLimits(values, shop),
  })
  const shown = asked.ok ? shownSets(asked.value.proposal).find(({ option }) => option.key === values.set) : undefined
  if (!asked.ok || !shown) {
    const changes = await choiceChanges(seen, { step, shop, job })
    return changes.length === 0
      ? gone
      : refusedForm(before, values, stepFaultText({ code: 'plan-stale', changes }, shop))
  }
  const { option } = shown
  const { basis } = asked.value
  const placed = socketsFor(option.tubes, asked.value.wanted.sockets)
  const tubes = placed.map(({ tube, position }) => ({ tubeId: tube.candidate.tubeId, socketPosition: position }))
  const match = matchStatement(option, USUAL_YARDSTICKS, basis.ok ? basis.value.readOn : null)
  const chosen = await chooseTubes(step, shop, { jobNumber, group, tubes, match }, seen)
  if (!chosen.ok) return refusedForm(before, values, stepFaultText(chosen.fault, shop))
  revalidatePath(`/jobs/${jobNumber}`, 'layout')
  redirect(`/jobs/${jobNumber}/quote`)
}

/** One tube for a socket of its own: nothing is claimed of how alike it is to another. */
export async function submitTwin(
  jobNumber: string,
  socketPosition: string,
  before: FormState,
  form: FormData,
): Promise<FormState> {
  const { step, shop } = await requireStep()
  const values = typedValues(form)
  const tubes = [{ tubeId: values.tube ?? '', socketPosition }]
  const chosen = await chooseTubes(step, shop, { jobNumber, group: socketPosition, tubes, match: null })
  if (!chosen.ok) return refusedForm(before, values, stepFaultText(chosen.fault, shop))
  revalidatePath(`/jobs/${jobNumber}`, 'layout')
  redirect(`/jobs/${jobNumber}/quote`)
}

export async function dropChoice(jobNumber: string, group: string): Promise<void> {
  const { step, shop } = await requireStep()
  await dropTubes(step, shop, jobNumber, group)
  revalidatePath(`/jobs/${jobNumber}`, 'layout')
  redirect(`/jobs/${jobNumber}/tubes`)
}
