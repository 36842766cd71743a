/**
 * Twin triodes for a phase inverter, by how alike their two sections are.
 *
 *   imbalance = (max Ia / min Ia − 1) / 10 % + (max gm / min gm − 1) / 10 %
 *
 * both between the sections of one tube at its own test point, so tubes from different
 * instruments compare. 10 % is a shop rule, no source; makers allow ±30 % between sections
 * (common practice, no source), which is told and refuses nothing. One that rings strongly when
 * tapped comes after all others, as what follows amplifies it (common practice, no source).
 * Ties: price, then mark.
 */
import { type Ratio, ratio } from '../units'
import type { SectionFigures, TwinCandidate } from './candidate'
import { naturalOrder } from './natural-order'

export type BalancedTwin = {
  readonly candidate: TwinCandidate
  /** Larger over smaller, less one. */
  readonly current: Ratio
  /** null: not measured on both. */
  readonly transconductance: Ratio | null
  readonly imbalance: number
  /** Within what makers allow. */
  readonly within: boolean
}

const YARDSTICK = 0.1
export const MAKERS_ALLOW = 0.3

/** Best balanced first; those measured in current alone after those measured in both, those that ring strongly last. */
export function byBalance(tubes: readonly TwinCandidate[]): BalancedTwin[] {
  return tubes
    .map(balanceOf)
    .filter((twin) => twin !== null)
    .sort(
      (a, b) =>
        Number(a.candidate.ringsStrongly ?? false) - Number(b.candidate.ringsStrongly ?? false) ||
        Number(a.transconductance === null) - Number(b.transconductance === null) ||
        a.imbalance - b.imbalance ||
        a.candidate.price - b.candidate.price ||
        naturalOrder(a.candidate.mark, b.candidate.mark),
    )
}

/** null: a section without current. */
function balanceOf(candidate: TwinCandidate): BalancedTwin | null {
  const [one, other] = candidate.sections
  const current = apart(one.plateCurrent, other.plateCurrent)
  if (current === null) return null
  const transconductance = slopesApart(one, other)
  return {
    candidate,
    current,
    transconductance,
    imbalance: (current + (transconductance ?? 0)) / YARDSTICK,
    within: current <= MAKERS_ALLOW && (transconductance ?? 0) <= MAKERS_ALLOW,
  }
}

const slopesApart = (one: SectionFigures, other: SectionFigures): Ratio | null =>
  one.transconductance === null || other.transconductance === null
    ? null
    : apart(one.transconductance, other.transconductance)

function apart(a: number, b: number): Ratio | null {
  const [low, high] = [Math.min(a, b), Math.max(a, b)]
  // A millionth is far below any reading: equal to what the eye can tell is equal.
  return low > 0 ? ratio(Math.round(1e6 * (high / low - 1)) / 1e6) : null
}
