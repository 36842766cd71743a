/** Quads as a computation for a thread of its own. */
import type { ReadTube, SpreadRule } from '@/lib/domain/pairing/spread-rule'
import type { StockFault } from '@/lib/domain/pairing/tube-plane'
import type { Result } from '@/lib/domain/result'
import type { Task } from '../worker/task'
import { planTubeSets, type TubeSets } from './plan-tube-sets'

export type QuadsInput = {
  readonly tubes: readonly ReadTube[]
  readonly rule: SpreadRule
  /** Tubes in a set, 2 to 8. */
  readonly size: number
  readonly seconds: number
}

export const quadsTask: Task<QuadsInput, Result<TubeSets<ReadTube>, StockFault>> = (input, context) => {
  const { tubes, rule, size, seconds } = input
  const { report, cancelled } = context
  return planTubeSets(tubes, rule, { size, seconds, now: () => performance.now(), report, cancelled })
}
