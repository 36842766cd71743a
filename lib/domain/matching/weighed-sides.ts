/** Whether the difference of the two sides of a set weighs in its choice, and how much. */
import type { SocketDemand } from './candidate'
import type { MatchWeights } from './match-weights'
import type { SideBalance } from './search/side-balance'

/** From here on tubes stand in parallel on each side. */
const PARALLEL = 4

type Weighing = {
  readonly weights: MatchWeights
  readonly demand: Pick<SocketDemand, 'count' | 'pushPull'>
  /** Microamps in one yardstick. */
  readonly yard: number
}

/** null: not at all. Of a pair the difference is the spread of currents, which counts already. */
export function weighedSides({ weights, demand: { count, pushPull }, yard }: Weighing): SideBalance | null {
  const weight = Math.round(1000 * weights.sideDifference)
  return pushPull && count >= PARALLEL && count % 2 === 0 && weight > 0 ? { yard, weight } : null
}
