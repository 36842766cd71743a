/**
 * The stock level counted in sets. Pairs: the most there can be at once, exactly. Quads: as many
 * as were found by taking the closest first, and no more than half the pairs, as every quad
 * makes two pairs.
 */

import { nextSets } from '@/lib/domain/matching/search/next-sets'
import { setIndex } from '@/lib/domain/matching/search/set-index'
import { pairTubes } from '@/lib/domain/pairing/pair-tubes'
import type { SpreadRule } from '@/lib/domain/pairing/spread-rule'
import type { StockTube } from './stock-cohorts'

export type SetsPossible = {
  readonly pairs: number
  readonly quads: { readonly least: number; readonly most: number }
}

/** More than these are counted off the request. */
export const COUNTED_AT_ONCE = 400

/** Null: too many to count while a page waits. */
export function setsPossible(tubes: readonly StockTube[], rule: SpreadRule): SetsPossible | null {
  if (tubes.length > COUNTED_AT_ONCE) return null
  const pairing = pairTubes(tubes, { ...rule, singleCost: 'most-sets' })
  if (!pairing.ok) throw new Error(`The stock cannot be paired: ${JSON.stringify(pairing.fault)}`)
  const pairs = pairing.value.pairs.length
  return { pairs, quads: { least: quadsFound(tubes, rule, Math.floor(pairs / 2)), most: Math.floor(pairs / 2) } }
}

function quadsFound(tubes: readonly StockTube[], { yardsticks }: SpreadRule, most: number): number {
  if (most === 0) return 0
  const micros = (value: number) => Math.round(value * 1e6)
  const index = setIndex({
    x: Int32Array.from(tubes, ({ plateCurrent }) => micros(plateCurrent)),
    y: Int32Array.from(tubes, ({ transconductance }) => (transconductance === null ? 1 : micros(transconductance))),
    cost: new Int32Array(tubes.length),
    price: new Int32Array(tubes.length),
  })
  const [xYard, yYard] = [micros(yardsticks.plateCurrent), Math.round(yardsticks.transconductance * 1e4)]
  const scale = { xYard, yYard, xWeight: 1000, yWeight: 1000 }
  return nextSets(index, { count: 4, scale, xLimit: xYard, yLimit: yYard }, [], most).length
}
