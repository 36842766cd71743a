/** Quads, or sets of any size from 2 to 8, from a whole stock of tubes read alike. */
import type { ReadTube, SpreadRule } from '@/lib/domain/pairing/spread-rule'
import { type StockFault, tubePlane } from '@/lib/domain/pairing/tube-plane'
import { ok, type Result } from '@/lib/domain/result'
import { planSets, type SetOptions } from './plan-sets'
import { gapOf, type SetPlan } from './set-plan'

export type TubeSets<T> = {
  /** By the first mark of each. */
  readonly sets: readonly { readonly tubes: readonly T[]; readonly spread: number }[]
  readonly singles: readonly T[]
  /** Steps, as in `spread-rule.ts`. */
  readonly totalSpread: number
  readonly totalCost: number
  readonly singleCost: number
  /** No choice of sets of these tubes costs less, whichever tubes are put together. */
  readonly leastCost: number
  /** (totalCost - leastCost) / totalCost. */
  readonly gap: number
  readonly ended: SetPlan['ended']
}

export async function planTubeSets<T extends ReadTube>(
  stock: readonly T[],
  rule: SpreadRule,
  options: SetOptions,
): Promise<Result<TubeSets<T>, StockFault>> {
  const placed = tubePlane(stock, rule, options.size)
  if (!placed.ok) return placed
  const { tubes, plane } = placed.value
  const plan = await planSets(plane, options)
  const tubesAt = (members: readonly number[]) => members.map((point) => tubes[point] as T)
  return ok({
    sets: plan.sets.map(({ members, spread }) => ({ tubes: tubesAt(members), spread })),
    singles: tubesAt(plan.singles),
    totalSpread: plan.sets.reduce((sum, { spread }) => sum + spread, 0),
    totalCost: plan.cost,
    singleCost: plane.singleCost,
    leastCost: plan.bound,
    gap: gapOf(plan),
    ended: plan.ended,
  })
}
