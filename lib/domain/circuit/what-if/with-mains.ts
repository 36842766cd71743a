/** The stage at another mains voltage: 1.1 is 10 % high. Every supply, grid supplies and heaters with it, follows in proportion. */

import type { IdleSolution } from '@/lib/domain/circuit/idle-solution'
import type { OutputStage } from '@/lib/domain/circuit/output-stage'
import type { SolveFault } from '@/lib/domain/circuit/solve-fault'
import { solveIdle } from '@/lib/domain/circuit/solve-idle'
import type { Result } from '@/lib/domain/result'
import type { Ratio } from '@/lib/domain/units'

/** `mainsFactor` takes the place of the stage's own. The heaters' share is in the solution's cautions. */
export const withMains = (
  stage: OutputStage,
  mainsFactor: Ratio,
  near?: IdleSolution,
): Result<IdleSolution, SolveFault> => solveIdle({ ...stage, mainsFactor }, near)
