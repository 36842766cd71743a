/**
 * Pairs up a whole stock of tubes read alike: the pairs of least spread and
 * the tubes left single, at the least sum of both there is (`spread-rule.ts`
 * says what they cost). The same tubes in any order give the same pairs.
 */
import { ok, type Result } from '../result'
import { checkCertificate } from './check/check-certificate'
import { pairPlane, type Watch } from './pair-plane'
import { distanceIn } from './plane'
import type { ReadTube, SpreadRule } from './spread-rule'
import { type StockFault, tubePlane } from './tube-plane'

/** Marks as tubes are called in the shop. */
export type TubePair<T> = {
  readonly tubes: readonly [T, T]
  /** Steps. */
  readonly spread: number
}

export type TubePairs<T> = {
  /** By the first mark of each. */
  readonly pairs: readonly TubePair<T>[]
  readonly singles: readonly T[]
  /** Steps: of all pairs; and with what the singles are charged. */
  readonly totalSpread: number
  readonly totalCost: number
  /** What a single was charged. */
  readonly singleCost: number
  /** No pairing of these tubes costs less: checked over all permitted pairs. */
  readonly proof: { readonly leastCost: number; readonly points: number; readonly blossoms: number }
}

export type PairFault = StockFault | { readonly kind: 'stopped' }

export function pairTubes<T extends ReadTube>(
  stock: readonly T[],
  rule: SpreadRule,
  watch?: Watch,
): Result<TubePairs<T>, PairFault> {
  const placed = tubePlane(stock, rule, 2)
  if (!placed.ok) return placed
  const { tubes, plane } = placed.value
  const pairing = pairPlane(plane, watch)
  if (!pairing) return { ok: false, fault: { kind: 'stopped' } }
  const unproved = checkCertificate(plane, pairing)
  if (unproved) throw new Error(`The pairing of ${tubes.length} tubes does not bear out its proof: ${unproved}`)
  const pairs = [...tubes.keys()].flatMap((a) => {
    const b = pairing.partner[a] as number
    return a < b ? [{ tubes: [tubes[a] as T, tubes[b] as T] as const, spread: distanceIn(plane, a, b) }] : []
  })
  return ok({
    pairs,
    singles: tubes.filter((_, point) => pairing.partner[point] === -1),
    totalSpread: pairs.reduce((sum, { spread }) => sum + spread, 0),
    totalCost: pairing.cost,
    singleCost: plane.singleCost,
    proof: {
      leastCost: pairing.cost,
      points: tubes.length,
      blossoms: pairing.certificate.blossomDuals.length,
    },
  })
}
