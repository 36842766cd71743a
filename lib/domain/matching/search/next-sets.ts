/** The next best sets, each without any tube of those before it. */
import { type BestSet, bestSet, type SetQuery } from './best-set'
import type { SetIndex } from './set-index'

export function nextSets(index: SetIndex, query: SetQuery, found: readonly BestSet[], most: number): BestSet[] {
  const excluded = query.excluded ? query.excluded.slice() : new Uint8Array(index.size)
  for (const { places } of found) for (const place of places) excluded[place] = 1
  const next: BestSet[] = []
  while (next.length < most) {
    const set = bestSet(index, { ...query, excluded })
    if (!set) break
    next.push(set)
    for (const place of set.places) excluded[place] = 1
  }
  return next
}
