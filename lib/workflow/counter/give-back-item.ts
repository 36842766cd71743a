/** Ticks an item left with the amplifier as given back, or not. */

import { isClosed } from '@/lib/domain/job/job-state'
import type { Result } from '@/lib/domain/result'
import { inTransaction } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { saveItemReturned } from '@/lib/store/job-item'
import { refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { requireJob } from './keep-job'

export type ItemTick = { readonly jobNumber: string; readonly itemId: string; readonly returned: boolean }

export function giveBackItem(step: Step, { jobNumber, itemId, returned }: ItemTick): Promise<Result<null, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const job = await requireJob(tx, jobNumber)
      if (isClosed(job.state)) return refuse({ code: 'job-closed', state: job.state })
      const item = job.items.find(({ id }) => id === itemId)
      if (!item || !(await saveItemReturned(tx, job.id, itemId, returned)))
        return refuse({ code: 'not-found', what: 'This item' })
      if (item.returned === returned) return null
      const { actor, now } = step
      const did = `${item.count} × ${item.label}: ${returned ? 'laid ready to go back' : 'not laid ready after all'}`
      await writeHistory(tx, { at: now, person: actor.name, subject: 'job', subjectId: job.id, jobId: job.id, did })
      return null
    }),
  )
}
