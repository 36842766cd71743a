/**
 * The stage with another rectifier: null is silicon, whose volt or so is left out.
 *
 * Winding and reservoir stay as they are, so the open-circuit voltage does. Whether the
 * reservoir capacitor and the heater winding suit the other tube is not asked here.
 */

import type { IdleSolution } from '@/lib/domain/circuit/idle-solution'
import type { OutputStage } from '@/lib/domain/circuit/output-stage'
import type { SolveFault } from '@/lib/domain/circuit/solve-fault'
import { solveIdle } from '@/lib/domain/circuit/solve-idle'
import type { DiodeParameters } from '@/lib/domain/model/plate-curves'
import type { Result } from '@/lib/domain/result'

export const withRectifier = (
  stage: OutputStage,
  rectifier: DiodeParameters | null,
  near?: IdleSolution,
): Result<IdleSolution, SolveFault> => solveIdle({ ...stage, supply: { ...stage.supply, rectifier } }, near)
