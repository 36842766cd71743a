/**
 * The best set of two and more, exactly: every tube in turn as the cheapest of a set, the anchor.
 *
 * An anchor of cost c leaves the spread of a set and what its tubes cost above c no more than
 * ceiling − count · c. So only cheap tubes can be anchors, and the dearer they are, the closer
 * and cheaper their companions must be (companions.ts): few have enough of them, and only these
 * are looked at set by set (set-growth.ts).
 *
 * The lower the ceiling, the less there is to do. First sets give one to begin with
 * (first-sets.ts); among a small share of the cheapest tubes each anchor gives one more; those
 * that promised most are searched with all tubes; and then all anchors. Whatever the first
 * steps find, the last one is complete.
 */
import { CompanionBounds } from './companion-bounds'
import { Companions } from './companions'
import type { Field } from './field'
import { offerFirstSets } from './first-sets'
import type { Incumbent } from './incumbent'
import { admits } from './running'
import { SetGrowth } from './set-growth'

/** Anchors of the share that are searched first. */
const PROMISING = 32
/** Of the slack. */
const AHEAD = 1 / 8

export function searchAnchors(field: Field, incumbent: Incumbent): void {
  if (field.lanes.strata > 0) new AnchorSearch(field, incumbent).run(null)
}

type Bounded = { readonly anchor: number; readonly bound: number }

/** Every anchor that may have a set which counts no more than the limit, with a lower bound of its sets; by that. */
export type Shortlist = { readonly limit: number; readonly anchors: readonly Bounded[] }

/**
 * The same, with the anchors noted that come close: those the next best set can have, unless it
 * counts above the limit. The bounds hold as well when further tubes are left out.
 */
export function searchAndNote(field: Field, incumbent: Incumbent): Shortlist {
  if (field.lanes.strata === 0) return { limit: Number.POSITIVE_INFINITY, anchors: [] }
  const noted: Bounded[] = []
  const search = new AnchorSearch(field, incumbent)
  search.run(noted)
  const limit = search.reach()
  const anchors = noted.filter(({ bound }) => bound <= limit).sort((a, b) => a.bound - b.bound)
  return { limit, anchors }
}

/** Only sets with the anchors of a shortlist; the ceiling is no higher than its limit. */
export function searchAmong(field: Field, incumbent: Incumbent, { anchors }: Shortlist): void {
  if (field.lanes.strata > 0) new AnchorSearch(field, incumbent).among(anchors)
}

class AnchorSearch {
  private readonly companions: Companions
  private readonly bounds: CompanionBounds
  private readonly growth: SetGrowth
  private readonly count: number
  private readonly lastStratum: number
  /** An objective above it was of no use from the beginning. */
  private readonly highest: number
  /** By rising bound. */
  private readonly promising: Bounded[] = []

  constructor(
    private readonly field: Field,
    private readonly incumbent: Incumbent,
  ) {
    this.companions = new Companions(field, incumbent.terms)
    this.count = incumbent.terms.count
    this.bounds = new CompanionBounds(field, this.count - 1)
    this.growth = new SetGrowth(field, incumbent)
    this.lastStratum = field.lanes.strata - 1
    this.highest = incumbent.ceiling
  }

  run(noted: Bounded[] | null): void {
    offerFirstSets(this.field, this.incumbent)
    this.share()
    for (const { anchor } of this.promising) {
      this.companions.turnTo(anchor)
      if (this.mayBeAnchor(anchor, this.incumbent.ceiling)) this.search(anchor, this.incumbent.ceiling)
    }
    this.all(noted)
  }

  among(anchors: readonly Bounded[]): void {
    for (const { anchor, bound } of anchors) {
      const { ceiling } = this.incumbent
      if (bound > ceiling) return
      if (!this.mayBeAnchor(anchor, ceiling)) continue
      this.companions.turnTo(anchor)
      this.search(anchor, ceiling)
    }
  }

  /** How far above the ceiling anchors are noted: a share of what a set counts above the cheapest tubes. */
  reach(): number {
    const { ceiling } = this.incumbent
    const slack = ceiling - this.count * (this.field.lanes.floor[0] as number)
    return Math.min(this.highest, ceiling + AHEAD * slack)
  }

  private share(): void {
    const { share, shareStratum } = this.field.lanes
    this.companions.rewind()
    for (let at = 0; at < share.length; at += 1) {
      const anchor = share[at] as number
      this.companions.advance(anchor)
      if (!this.mayBeAnchor(anchor, this.incumbent.ceiling)) continue
      this.gather(anchor, shareStratum, this.incumbent.ceiling)
      if (this.isOfUse(anchor)) this.promise(anchor)
    }
  }

  private promise(anchor: number): void {
    const { promising } = this
    const bound = this.bounds.least
    this.incumbent.offer(this.field, [anchor, ...this.bounds.nearest()])
    if (promising.length === PROMISING && bound >= (promising[PROMISING - 1]?.bound as number)) return
    if (promising.length === PROMISING) promising.pop()
    const to = promising.findIndex((other) => other.bound > bound)
    promising.splice(to < 0 ? promising.length : to, 0, { anchor, bound })
  }

  private all(noted: Bounded[] | null): void {
    const { field, companions, incumbent } = this
    const { laneOf } = field.lanes
    companions.rewind()
    for (let tube = 0; tube < field.size; tube += 1) {
      if ((laneOf[tube] as number) < 0) continue
      companions.advance(tube)
      const reach = noted === null ? incumbent.ceiling : this.reach()
      if (!this.mayBeAnchor(tube, reach)) continue
      this.search(tube, reach)
      const bound = this.bounds.least
      if (noted !== null && bound <= reach && bound < Number.POSITIVE_INFINITY) noted.push({ anchor: tube, bound })
    }
  }

  private mayBeAnchor(tube: number, ceiling: number): boolean {
    const { field } = this
    if (this.count * (field.cost[tube] as number) > ceiling) return false
    return (field.lanes.twinRank[tube] as number) < field.mostTwins && admits(field, tube)
  }

  /** Those that can be in a set with the anchor that counts no more than so much, and bounds of such sets. */
  private gather(anchor: number, lastStratum: number, ceiling: number): void {
    const { companions, bounds } = this
    companions.gather(anchor, lastStratum, ceiling)
    if (companions.count < this.count - 1) bounds.least = Number.POSITIVE_INFINITY
    else companions.bound(bounds)
  }

  /** After `gather`. */
  private isOfUse(anchor: number): boolean {
    const { bounds } = this
    const { ceiling, best } = this.incumbent
    if (bounds.least === Number.POSITIVE_INFINITY) return false
    if (bounds.least < ceiling || best === null) return bounds.least <= ceiling
    const { place } = this.field
    // At best as good as the best one: of use only with an earlier mark, or the same first one.
    const first = best.places[0] as number
    return bounds.least === ceiling && ((place[anchor] as number) <= first || bounds.earliest() <= first)
  }

  private search(anchor: number, reach: number): void {
    this.gather(anchor, this.lastStratum, reach)
    if (!this.isOfUse(anchor)) return
    this.incumbent.offer(this.field, [anchor, ...this.bounds.nearest()])
    const left = this.bounds.within(this.incumbent.ceiling)
    if (left.length >= this.count - 1) this.growth.from(anchor, left)
  }
}
