/**
 * Cuts on three points: two sets that each hold two of them share one, so of
 * all sets that hold two or three at most one is chosen. The relaxed choice
 * often breaks this by half.
 */
import type { Cut } from './cut-prices'
import type { Column } from './set-program'

const BROKEN_BY = 0.02
const AT_MOST = 400

/** The most broken first. */
export function brokenCuts(columns: readonly Column[], chosen: Float64Array, known: readonly Cut[]): readonly Cut[] {
  const pairs = pairWeights(columns, chosen)
  const seen = new Set(known.map(String))
  const broken: { cut: Cut; by: number }[] = []
  for (const [a, near] of pairs) {
    for (const b of near.keys()) {
      if (b <= a) continue
      for (const c of new Set([...near.keys(), ...(pairs.get(b)?.keys() ?? [])])) {
        if (c === a || c === b) continue
        const cut = [a, b, c].sort((left, right) => left - right) as unknown as Cut
        if (seen.has(String(cut))) continue
        seen.add(String(cut))
        const by = weightOf(cut, pairs, columns, chosen) - 1
        if (by > BROKEN_BY) broken.push({ cut, by })
      }
    }
  }
  broken.sort((x, y) => y.by - x.by || compareCuts(x.cut, y.cut))
  return broken.slice(0, AT_MOST).map(({ cut }) => cut)
}

/** For two points: the places of the columns in use that hold both. */
type Pairs = ReadonlyMap<number, ReadonlyMap<number, readonly number[]>>

function pairWeights(columns: readonly Column[], chosen: Float64Array): Pairs {
  const pairs = new Map<number, Map<number, number[]>>()
  columns.forEach(({ members }, place) => {
    if ((chosen[place] as number) < 1e-6) return
    for (const a of members) {
      const near = pairs.get(a) ?? new Map<number, number[]>()
      pairs.set(a, near)
      for (const b of members) {
        if (a === b) continue
        const places = near.get(b)
        if (places) places.push(place)
        else near.set(b, [place])
      }
    }
  })
  return pairs
}

function weightOf([a, b, c]: Cut, pairs: Pairs, _columns: readonly Column[], chosen: Float64Array): number {
  const of = (x: number, y: number) => pairs.get(x)?.get(y) ?? []
  const places = new Set([...of(a, b), ...of(b, c), ...of(a, c)])
  let weight = 0
  for (const place of places) weight += chosen[place] as number
  return weight
}

const compareCuts = (x: Cut, y: Cut): number => x[0] - y[0] || x[1] - y[1] || x[2] - y[2]
