/**
 * The best set, then the best of what is left of the tubes, and so on, each exactly as `bestSet`
 * finds it.
 *
 * The first search notes which anchors come close to the best set (anchor-search.ts). The sets
 * after it mostly have their anchors among these, and when one is found within the limit up to
 * which they were noted, it is the best there is; when none is, all anchors are searched again
 * and noted anew. Taking tubes away only raises the bounds they were noted with.
 */
import { type Shortlist, searchAmong, searchAndNote } from './anchor-search'
import { assertQuery, type BestSet, inTheRunning, type SetQuery, single, termsOf, withinCap } from './best-set'
import { type Field, fieldOf } from './field'
import { type Held, Incumbent } from './incumbent'
import { adjustedCosts } from './running'
import type { SetIndex } from './set-index'

type Noted = { readonly shortlist: Shortlist; readonly field: Field }

export class SetsInTurn {
  /** Adjusted already: laid out once for all of the sets. */
  private readonly index: SetIndex
  /** By place. */
  private readonly excluded: Uint8Array
  private readonly noted = new Map<number, Noted>()

  constructor(
    index: SetIndex,
    private readonly query: SetQuery,
  ) {
    assertQuery(index, query)
    const { adjustments } = query
    this.index = adjustments ? { ...index, cost: adjustedCosts(index, adjustments) } : index
    this.excluded = query.excluded ? query.excluded.slice() : new Uint8Array(index.size)
  }

  leaveOut(places: Iterable<number>): void {
    for (const place of places) this.excluded[place] = 1
  }

  /** Of the tubes not left out. */
  best(): BestSet | null {
    const { index, query } = this
    if (index.size < query.count) return null
    return withinCap(query, (priceCap) => this.held(priceCap))
  }

  private held(priceCap: number): Held | null {
    const terms = termsOf(this.query, priceCap)
    const running = inTheRunning(this.index, terms, { excluded: this.excluded })
    const { ceiling = Number.POSITIVE_INFINITY } = this.query
    if (terms.count === 1) return single(running, new Incumbent(terms, ceiling))
    const field = fieldOf(running, terms)
    const before = this.noted.get(priceCap)
    if (before && covers(before.field, field)) {
      const incumbent = new Incumbent(terms, before.shortlist.limit)
      searchAmong(field, incumbent, before.shortlist)
      if (incumbent.best || before.shortlist.limit === ceiling) return incumbent.best
    }
    const incumbent = new Incumbent(terms, ceiling)
    this.noted.set(priceCap, { shortlist: searchAndNote(field, incumbent), field })
    return incumbent.best
  }
}

/** Every tube that may be an anchor of a set now might have been one when they were noted. */
function covers(noted: Field, now: Field): boolean {
  if (noted.lanes !== now.lanes) return false
  return noted.lanes.highestRank < noted.mostTwins || now.mostTwins <= noted.mostTwins
}
