/** The next best sets, each without any tube of those before it. */
import type { BestSet, SetQuery } from './best-set'
import type { SetIndex } from './set-index'
import { SetsInTurn } from './sets-in-turn'

export function nextSets(index: SetIndex, query: SetQuery, found: readonly BestSet[], most: number): BestSet[] {
  const sets = new SetsInTurn(index, query)
  for (const { places } of found) sets.leaveOut(places)
  const next: BestSet[] = []
  while (next.length < most) {
    const set = sets.best()
    if (!set) break
    next.push(set)
    sets.leaveOut(set.places)
  }
  return next
}
