/** Corrects a job's own entries, or moves it by hand to another state. */

import { formatDay } from '@/lib/domain/calendar'
import { type Change, changesBetween, type Shown, shown } from '@/lib/domain/history/changes'
import type { Job, JobIntake } from '@/lib/domain/job/job'
import { type JobState, jobStateWord, moveJob } from '@/lib/domain/job/job-state'
import { formatMoney } from '@/lib/domain/money'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import { inTransaction, type Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { findJob, type JobChange, saveJob } from '@/lib/store/job'
import { refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'

export type JobItemInput = { readonly count: number; readonly label: string }

export function intakeShown(intake: JobIntake, shop: Shop): Shown {
  const { locale } = wordsFor(shop.words)
  const limit = intake.spendingLimit
  return shown([
    ['Fault', intake.fault],
    ['Settings that show it', intake.faultSettings],
    ['Spending limit', limit === null ? 'none agreed' : formatMoney(limit, shop.currency, locale)],
    ['Promised', intake.promisedOn && formatDay(intake.promisedOn, locale)],
    ['Old parts back', intake.oldPartsBack ? 'yes' : 'no'],
    ['Items left', intake.items.map(({ count, label }) => `${count} × ${label}`).join(', ')],
  ])
}

export async function requireJob(tx: Tx, number: string): Promise<Job> {
  return (await findJob(number, tx)) ?? refuse({ code: 'not-found', what: `Job ${number}` })
}

/** Writes the change under its version and the history entry with it. */
export async function changeJob(
  tx: Tx,
  { actor, now }: Step,
  job: Job,
  {
    did,
    change,
    changes = [],
    items,
  }: { did: string; change: JobChange; changes?: readonly Change[]; items?: Parameters<typeof saveJob>[4] },
): Promise<void> {
  if (!(await saveJob(tx, job.id, job.version, change, items))) refuse(await stale(tx, 'job', job.id, job.version))
  await writeHistory(tx, {
    at: now,
    person: actor.name,
    subject: 'job',
    subjectId: job.id,
    jobId: job.id,
    did,
    changes,
    version: job.version + 1,
  })
}

/** A step of the work takes the job along to the state it leads to. */
export async function moveJobInside(
  tx: Tx,
  step: Step,
  job: Job,
  to: JobState,
  did: string,
  more: JobChange = {},
): Promise<void> {
  const moved = moveJob(job.state, to)
  if (!moved.ok) refuse(moved.fault)
  const changes = job.state === to ? [] : [{ label: 'State', from: jobStateWord(job.state), to: jobStateWord(to) }]
  const stateSince = job.state === to ? job.stateSince : step.now
  await changeJob(tx, step, job, { did, change: { ...more, state: to, stateSince }, changes })
}

export function keepJob(
  step: Step,
  shop: Shop,
  input: { readonly number: string; readonly version: number; readonly intake: JobIntake },
): Promise<Result<null, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const { items, ...intake } = input.intake
      const job = { ...(await requireJob(tx, input.number)), version: input.version }
      const before = intakeShown(job, shop)
      const changes = changesBetween(before, intakeShown(input.intake, shop))
      const returned = new Map(job.items.map((item) => [item.label, item.returned]))
      const rows = items.map((item) => ({ ...item, returned: returned.get(item.label) ?? false }))
      await changeJob(tx, step, job, { did: 'Job entries corrected', change: intake, changes, items: rows })
      return null
    }),
  )
}

export function moveJobByHand(
  step: Step,
  number: string,
  version: number,
  to: JobState,
): Promise<Result<null, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const job = { ...(await requireJob(tx, number)), version }
      await moveJobInside(tx, step, job, to, `Moved to “${jobStateWord(to)}”`)
      return null
    }),
  )
}
