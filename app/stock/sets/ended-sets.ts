import 'server-only'
import type { Result } from '@/lib/domain/result'
import { type PlanningFault, type PlanningRun, planningRun } from '@/lib/planning/planning-run'
import type { SetsPlan } from '@/lib/planning/sets/sets-plan'

export function setsRun(id: string): PlanningRun<SetsPlan> | null {
  const run = planningRun(id)
  return run?.kind === 'sets' ? (run as PlanningRun<SetsPlan>) : null
}

/** Null: not ended, or not known here. */
export async function endedSets(id: string): Promise<Result<SetsPlan, PlanningFault> | null> {
  const run = setsRun(id)
  return run?.state() === 'ended' ? run.result : null
}
