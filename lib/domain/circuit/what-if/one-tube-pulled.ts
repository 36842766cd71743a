/**
 * The stage with one socket empty: what the others then do. A shared cathode resistor
 * carries less, a soft supply rises, so the tubes left run hotter.
 */

import type { IdleSolution } from '@/lib/domain/circuit/idle-solution'
import type { OutputStage } from '@/lib/domain/circuit/output-stage'
import type { SolveFault } from '@/lib/domain/circuit/solve-fault'
import { solveIdle } from '@/lib/domain/circuit/solve-idle'
import { fail, type Result } from '@/lib/domain/result'

/** Refused with `tube-count` when it is the only one. */
export function oneTubePulled(stage: OutputStage, socket: string): Result<IdleSolution, SolveFault> {
  const tubes = stage.tubes.filter((tube) => tube.socket !== socket)
  if (tubes.length === stage.tubes.length) return fail({ code: 'unknown-socket', socket })
  return solveIdle({ ...stage, tubes })
}
