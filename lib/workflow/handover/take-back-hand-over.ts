/**
 * A hand-over that was noted on the wrong job, or too early, is taken back: the amplifier still
 * stands in the shop. Release and safety lines hold as they did; payments, items ticked as given
 * back and parts out of their drawers stay as noted. The sheet that was printed says from then on
 * that it no longer holds.
 */
import { jobStateWord } from '@/lib/domain/job/job-state'
import type { Result } from '@/lib/domain/result'
import { inTransaction } from '@/lib/store/database'
import { findJobOfAmpSince } from '@/lib/store/job'
import { takeBackPapers } from '@/lib/store/paper'
import { changeJob, requireJob } from '@/lib/workflow/counter/keep-job'
import { refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'

export type TakeBackHandOver = { readonly jobNumber: string; readonly reason: string }

export function takeBackHandOver(
  step: Step,
  { jobNumber, reason }: TakeBackHandOver,
): Promise<Result<null, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const job = await requireJob(tx, jobNumber)
      const { state, collectedAt, collectedBy } = job
      if (state !== 'collected' || collectedAt === null) return refuse({ code: 'not-handed-over', state })
      const because = reason.trim()
      if (because === '') refuse({ code: 'take-back-reason-missing' })
      const since = await findJobOfAmpSince(job.ampId, collectedAt, tx)
      if (since !== null) refuse({ code: 'taken-in-since', jobNumber: since })
      const change = {
        ...({ state: 'ready', stateSince: step.now } as const),
        ...{ collectedBy: '', collectedIdentity: '', collectedAt: null },
      }
      const changes = [
        { label: 'State', from: jobStateWord(state), to: jobStateWord('ready') },
        { label: 'Collected by', from: collectedBy, to: '' },
        { label: 'Reason', from: '', to: because },
      ]
      await changeJob(tx, step, job, { did: 'Hand-over taken back', change, changes })
      await takeBackPapers(tx, { jobId: job.id, kind: 'pickup-sheet' }, { at: step.now, because })
      return null
    }),
  )
}
