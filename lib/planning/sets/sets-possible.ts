/**
 * The stock level counted in sets. Pairs: the most there can be at once, exactly. Quads the same,
 * unless the stock is too crowded to try every way while a page waits: then as many as were found
 * by taking the closest first, and no more than half the pairs, as every quad makes two pairs.
 */

import { nextSets } from '@/lib/domain/matching/search/next-sets'
import { setIndex } from '@/lib/domain/matching/search/set-index'
import { pairTubes } from '@/lib/domain/pairing/pair-tubes'
import type { SpreadRule } from '@/lib/domain/pairing/spread-rule'
import { mostQuads, type QuadLimits } from './most-quads'
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
  return { pairs, quads: quadsPossible(tubes, rule, Math.floor(pairs / 2)) }
}

const micros = (value: number): number => Math.round(value * 1e6)

function quadsPossible(tubes: readonly StockTube[], { yardsticks }: SpreadRule, most: number): SetsPossible['quads'] {
  if (most === 0) return { least: 0, most: 0 }
  const points = {
    x: Int32Array.from(tubes, ({ plateCurrent }) => micros(plateCurrent)),
    y: Int32Array.from(tubes, ({ transconductance }) => (transconductance === null ? 1 : micros(transconductance))),
  }
  const limits = { xLimit: micros(yardsticks.plateCurrent), yLimit: Math.round(yardsticks.transconductance * 1e4) }
  const least = quadsFound(points, limits, most)
  if (least === most) return { least, most }
  const exact = mostQuads(
    tubes.map((_, at) => ({ x: points.x[at] as number, y: points.y[at] as number })),
    limits,
  )
  return exact === null ? { least, most } : { least: exact, most: exact }
}

type Points = { readonly x: Int32Array; readonly y: Int32Array }

/** The closest first. */
function quadsFound({ x, y }: Points, { xLimit, yLimit }: QuadLimits, most: number): number {
  const index = setIndex({ x, y, cost: new Int32Array(x.length), price: new Int32Array(x.length) })
  const scale = { xYard: xLimit, yYard: yLimit, xWeight: 1000, yWeight: 1000 }
  return nextSets(index, { count: 4, scale, xLimit, yLimit }, [], most).length
}
