/**
 * The plain way to the best set, written apart from the program: look at every one. Spreads
 * are whole-number divisions of big integers, so nothing is rounded but what the rule rounds.
 */
import type { BestSet, SetQuery } from '@/lib/domain/matching/search/best-set'
import type { SetPoints } from '@/lib/domain/matching/search/set-index'
import { subsets } from './subsets'

export type Judged = { readonly places: readonly number[]; readonly objective: bigint; readonly price: number }

/** null: outside a limit. */
export function judge(points: SetPoints, places: readonly number[], query: SetQuery): Judged | null {
  const at = (values: ArrayLike<number>) => places.map((place) => values[place] as number)
  const [x, y] = [at(points.x), at(points.y)]
  const [range, weakest, strongest] = [Math.max(...x) - Math.min(...x), Math.min(...y), Math.max(...y)]
  const price = at(points.price).reduce((sum, each) => sum + each, 0)
  const { scale, xLimit, yLimit, priceCap, adjustments, ceiling, balance } = query
  if (xLimit !== undefined && range > xLimit) return null
  if (yLimit !== undefined && BigInt(strongest - weakest) * 10_000n > BigInt(yLimit) * BigInt(weakest)) return null
  if (priceCap !== undefined && price > priceCap) return null
  // One yardstick is a million points; weights are in thousandths, the y yardstick in ten-thousandths.
  const xPoints = (BigInt(range) * BigInt(scale.xWeight) * 1_000n) / BigInt(scale.xYard)
  const yPoints =
    (BigInt(strongest - weakest) * BigInt(scale.yWeight) * 10_000_000n) / (BigInt(weakest) * BigInt(scale.yYard))
  const costs = [...at(points.cost), ...(adjustments ? at(adjustments) : [])]
  const sidePoints = balance ? (BigInt(leastApart(x)) * BigInt(balance.weight) * 1_000n) / BigInt(balance.yard) : 0n
  const objective = costs.reduce((sum, each) => sum + BigInt(each), xPoints + yPoints + sidePoints)
  return ceiling !== undefined && objective > BigInt(ceiling) ? null : { places, objective, price }
}

/** Every half of them against the rest. */
function leastApart(values: readonly number[]): number {
  const sum = (places: readonly number[]) => places.reduce((total, place) => total + (values[place] as number), 0)
  const all = [...values.keys()]
  const differences = [...subsets(all, all.length / 2)].map((half) => Math.abs(sum(all) - 2 * sum(half)))
  return Math.min(...differences)
}

const earlier = (a: Judged, b: Judged): boolean => {
  if (a.objective !== b.objective) return a.objective < b.objective
  const first = a.places.findIndex((place, at) => place !== b.places[at])
  return first >= 0 && (a.places[first] as number) < (b.places[first] as number)
}

export function bestOfEvery(points: SetPoints, query: SetQuery): Judged | null {
  const open = [...points.x.keys()].filter((place) => query.excluded?.[place] !== 1)
  let best: Judged | null = null
  for (const places of subsets(open, query.count)) {
    const judged = judge(points, places, query)
    if (judged && (best === null || earlier(judged, best))) best = judged
  }
  return best
}

export const asJudged = (set: BestSet | null): Judged | null =>
  set && { places: set.places, objective: BigInt(set.objective), price: set.price }
