/** Releases the amplifier: only when every safety line is signed and none fails. */
import type { Job } from '@/lib/domain/job/job'
import type { Result } from '@/lib/domain/result'
import { releaseGate } from '@/lib/domain/safety/release-gate'
import type { Shop } from '@/lib/domain/shop/shop'
import { inTransaction, type Tx } from '@/lib/store/database'
import { moveJobInside, requireJob } from '@/lib/workflow/counter/keep-job'
import { allowed, refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { type SafetyState, safetyState } from './safety-state'

/** Also before a hand-over: a job may have come to “ready” by hand, out of the uncollected ones. */
export async function assertReleasable(tx: Tx, shop: Shop, job: Job): Promise<SafetyState> {
  const state = await safetyState(job, shop, tx)
  const gate = releaseGate(state.lines)
  return gate.ok ? state : refuse(gate.fault)
}

export function releaseJob(step: Step, shop: Shop, jobNumber: string): Promise<Result<null, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const may = allowed(step, 'sign-off')
      if (!may.ok) refuse(may.fault)
      const job = await requireJob(tx, jobNumber)
      if (job.state !== 'ready') {
        await assertReleasable(tx, shop, job)
        await moveJobInside(tx, step, job, 'ready', 'Released: every safety line is signed')
      }
      return null
    }),
  )
}
