/** Why a stocked tube may not go into a socket, in sentences, by the rules the choice of a set keeps. Empty: it may. */
import type { PlaceDemand } from '@/lib/domain/bench/place-demand'
import type { MatchLimits } from '@/lib/domain/matching/candidate'
import { exclusionReasons } from '@/lib/domain/matching/eligibility'
import { exclusionText, type MatchingFormat } from '@/lib/domain/matching/matching-text'
import { type CandidateView, candidateOf, type JudgedTube, twinOf } from './candidate-of'

export type UnfitView = CandidateView & { readonly limits: MatchLimits; readonly format: MatchingFormat }

export function unfitFor(stocked: JudgedTube, place: PlaceDemand, view: UnfitView): string[] {
  const { limits, format } = view
  const reasons = exclusionReasons(candidateOf(stocked, view), place.demand, limits)
    .filter(({ code }) => !(code === 'untested' && isRead(stocked, place)))
    .map((each) => exclusionText(each, format))
  const asksTwin = place.socket.role === 'phase-inverter' && reasons.length === 0
  return asksTwin && twinOf(stocked, view) === null ? ['Both sections are compared here; test both.'] : reasons
}

/** Where nothing is compared, a record without a test point does, as of a rectifier, which has no grid. */
const isRead = ({ test, shortsFoundAt }: JudgedTube, { group, socket }: PlaceDemand): boolean =>
  group === null &&
  socket.role !== 'phase-inverter' &&
  shortsFoundAt === null &&
  (test?.sections.some(({ plateCurrent }) => plateCurrent !== null && plateCurrent > 0) ?? false)
