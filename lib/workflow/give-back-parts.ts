/** Parts that were taken and that no ticked line uses any more, as after a revision, go back into their drawer. */
import type { Result } from '@/lib/domain/result'
import { inTransaction } from '@/lib/store/database'
import { requireWork } from './do-work'
import { drawAsTicked } from './draw-parts'
import { refusing, type Step } from './step'
import type { StepFault } from './step-fault'

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
