import 'server-only'
import type { Result } from '@/lib/domain/result'
import { type PlanningFault, type PlanningRun, planningRun } from '@/lib/planning/planning-run'
import type { SharePlan } from '@/lib/planning/sharing/share-plan'

export function shareRun(id: string): PlanningRun<SharePlan> | null {
  const run = planningRun(id)
  return run?.kind === 'share' ? (run as PlanningRun<SharePlan>) : null
}

/** Null: not ended, or not known here. */
export async function endedShare(id: string): Promise<Result<SharePlan, PlanningFault> | null> {
  const run = shareRun(id)
  return run?.state() === 'ended' ? run.result : null
}
