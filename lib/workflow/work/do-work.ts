/** At the bench: operations and parts of the accepted quote ticked off, and the job taken on to testing. */
import type { Job } from '@/lib/domain/job/job'
import type { JobState } from '@/lib/domain/job/job-state'
import type { Result } from '@/lib/domain/result'
import { inTransaction, type Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { findAcceptedQuote, saveLineDone } from '@/lib/store/quote'
import { moveJobInside, requireJob } from '@/lib/workflow/counter/keep-job'
import { allowed, refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { drawAsTicked } from './draw-parts'

/** Released or gone: what is done then would not be covered by the sign-off. */
const CLOSED_TO_WORK: readonly JobState[] = ['ready', 'collected', 'returned-unrepaired', 'uncollected']

export const openToWork = (state: JobState): boolean => !CLOSED_TO_WORK.includes(state)

export async function requireWork(tx: Tx, step: Step, number: string): Promise<Job> {
  const may = allowed(step, 'bench-work')
  if (!may.ok) refuse(may.fault)
  const job = await requireJob(tx, number)
  return openToWork(job.state) ? job : refuse({ code: 'work-closed', state: job.state })
}

export type Tick = { readonly jobNumber: string; readonly lineId: string; readonly done: boolean }

/** Nothing is written when it stands so already. */
export function tickLine(step: Step, { jobNumber, lineId, done }: Tick): Promise<Result<null, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const job = await requireWork(tx, step, jobNumber)
      const quote = await findAcceptedQuote(job.id, tx)
      const line = quote?.lines.find(({ id, kind }) => id === lineId && kind !== 'tube')
      if (!line) return refuse({ code: 'not-found', what: 'This line of the accepted quote' })
      if ((line.doneAt !== null) === done) return null
      const { actor, now } = step
      await saveLineDone(tx, line.id, done ? { at: now, by: actor.name } : null)
      if (line.partId !== null)
        await drawAsTicked(tx, step, job, {
          partId: line.partId,
          by: `${done ? 'ticked' : 'unticked'} on the work order`,
        })
      const did = done ? `Done: ${line.text}` : `Not done after all: ${line.text}`
      await writeHistory(tx, { at: now, person: actor.name, subject: 'job', subjectId: job.id, jobId: job.id, did })
      return null
    }),
  )
}

export function finishWork(step: Step, jobNumber: string): Promise<Result<null, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const job = await requireWork(tx, step, jobNumber)
      await moveJobInside(tx, step, job, 'testing', 'Work done: on to testing')
      return null
    }),
  )
}
