/** The twins of a stock that may stand in a phase inverter's socket, by how alike their sections are. */
import { type BalancedTwin, byBalance } from '@/lib/domain/matching/balanced-sections'
import type { MatchLimits, SocketDemand } from '@/lib/domain/matching/candidate'
import { exclusionReasons } from '@/lib/domain/matching/eligibility'
import { type CandidateView, type JudgedTube, twinOf } from './candidate-of'

/** One whose sections were not both read is left out, as is one that `unfitFor` has anything against. */
export function balancedTwins(
  stock: readonly JudgedTube[],
  demand: SocketDemand,
  { limits, ...view }: CandidateView & { readonly limits: MatchLimits },
): BalancedTwin[] {
  const twins = stock.flatMap((each) => twinOf(each, view) ?? [])
  return byBalance(twins.filter((twin) => exclusionReasons(twin, demand, limits).length === 0))
}
