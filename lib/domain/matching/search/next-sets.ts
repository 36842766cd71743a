/** The next best sets, each without any tube of those before it. */
import { type BestSet, bestSet, type SetQuery } from './best-set'
import { type Adjustments, adjustedCosts } from './running'
import type { SetIndex } from './set-index'

export function nextSets(index: SetIndex, query: SetQuery, found: readonly BestSet[], most: number): BestSet[] {
  const { adjustments, ...plain } = query
  // Adjusted once: the index is laid out for all of the sets together.
  const weighed = adjustments ? { ...index, cost: adjustedCosts(index, adjustments) } : index
  const excluded = query.excluded ? query.excluded.slice() : new Uint8Array(index.size)
  for (const { places } of found) for (const place of places) excluded[place] = 1
  const next: BestSet[] = []
  while (next.length < most) {
    const set = bestSet(weighed, { ...plain, excluded })
    if (!set) break
    next.push(adjustments ? { ...set, cost: set.cost - adjustedBy(adjustments, set) } : set)
    for (const place of set.places) excluded[place] = 1
  }
  return next
}

const adjustedBy = (adjustments: Adjustments, { places }: BestSet): number =>
  places.reduce((total, place) => total + (adjustments[place] as number), 0)
