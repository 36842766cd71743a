import type { IdleSolution, TubeIdle } from '@/lib/domain/circuit/idle-solution'
import type { OutputStage } from '@/lib/domain/circuit/output-stage'
import { solveIdle } from '@/lib/domain/circuit/solve-idle'

/** The solution, or the test ends with the fault. */
export function solved(stage: OutputStage): IdleSolution {
  const result = solveIdle(stage)
  if (!result.ok) throw new Error(JSON.stringify(result.fault))
  return result.value
}

export function tubeOf(solution: IdleSolution, socket: string): TubeIdle {
  const tube = solution.tubes.find((one) => one.socket === socket)
  if (!tube) throw new Error(`No ${socket}`)
  return tube
}

export function refused<T, F>(result: { ok: true; value: T } | { ok: false; fault: F }): F {
  if (result.ok) throw new Error('Expected a refusal')
  return result.fault
}

export function given<T, F>(result: { ok: true; value: T } | { ok: false; fault: F }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.fault))
  return result.value
}
