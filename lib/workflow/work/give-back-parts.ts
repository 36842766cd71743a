/** Parts that were taken and that no ticked line uses any more, as after a revision, go back into their drawer. */
import type { Result } from '@/lib/domain/result'
import { inTransaction } from '@/lib/store/database'
import { refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { requireWork } from './do-work'
import { drawAsTicked } from './draw-parts'

export type PartsLeftOver = { readonly jobNumber: string; readonly partId: string }

export function giveBackParts(step: Step, { jobNumber, partId }: PartsLeftOver): Promise<Result<null, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const job = await requireWork(tx, step, jobNumber)
      await drawAsTicked(tx, step, job, { partId, by: 'not used after all' })
      return null
    }),
  )
}
