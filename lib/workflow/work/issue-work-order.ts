/** Draws the work order from the records and freezes it. It may be printed as often as the work changes. */
import { workOrderPaper } from '@/lib/documents/work-order'
import { isClosed } from '@/lib/domain/job/job-state'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { inTransaction } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { findJobHead } from '@/lib/store/job-head'
import { createPaper } from '@/lib/store/paper'
import { refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { workOrderFacts } from './work-order-facts'

export type WorkOrderInput = {
  readonly jobNumber: string
  /** Where its code leads: the shop's own address. */
  readonly address: string
}

/** Gives the id of the paper. */
export function issueWorkOrder(
  step: Step,
  shop: Shop,
  { jobNumber, address }: WorkOrderInput,
): Promise<Result<string, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const head = await findJobHead(jobNumber, tx)
      if (!head) return refuse({ code: 'not-found', what: `Job ${jobNumber}` })
      const { job } = head
      if (isClosed(job.state)) return refuse({ code: 'job-closed', state: job.state })
      const { actor, now } = step
      const facts = await workOrderFacts(tx, shop, head, { now, address })
      const paper = { jobId: job.id, kind: 'work-order', number: job.number, issuedAt: now, issuedBy: actor.name }
      const id = await createPaper(tx, { ...paper, view: workOrderPaper(facts) })
      await writeHistory(tx, {
        at: now,
        person: actor.name,
        subject: 'job',
        subjectId: job.id,
        jobId: job.id,
        did: 'Work order printed',
      })
      return id
    }),
  )
}
