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

export function searchAnchors(field: Field, incumbent: Incumbent): void {
  if (field.lanes.strata > 0) new AnchorSearch(field, incumbent).run()
}

class AnchorSearch {
  private readonly companions: Companions
  private readonly bounds: CompanionBounds
  private readonly growth: SetGrowth
  private readonly count: number
  private readonly lastStratum: number
  /** By rising bound. */
  private readonly promising: { readonly anchor: number; readonly bound: number }[] = []

  constructor(
    private readonly field: Field,
    private readonly incumbent: Incumbent,
  ) {
    this.companions = new Companions(field, incumbent)
    this.count = incumbent.terms.count
    this.bounds = new CompanionBounds(field, this.count - 1)
    this.growth = new SetGrowth(field, incumbent)
    this.lastStratum = field.lanes.strata - 1
  }

  run(): void {
    offerFirstSets(this.field, this.incumbent)
    this.share()
    for (const { anchor } of this.promising) {
      this.companions.turnTo(anchor)
      this.search(anchor)
    }
    this.all()
  }

  private share(): void {
    const { share, shareStratum } = this.field.lanes
    this.companions.rewind()
    for (let at = 0; at < share.length; at += 1) {
      const anchor = share[at] as number
      this.companions.advance(anchor)
      if (this.mayBeAnchor(anchor) && this.hasCompanions(anchor, shareStratum)) this.promise(anchor)
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

  private all(): void {
    const { field, companions } = this
    const { laneOf } = field.lanes
    companions.rewind()
    for (let tube = 0; tube < field.size; tube += 1) {
      if ((laneOf[tube] as number) < 0) continue
      companions.advance(tube)
      if (this.mayBeAnchor(tube)) this.search(tube)
    }
  }

  private mayBeAnchor(tube: number): boolean {
    const { field } = this
    if (this.count * (field.cost[tube] as number) > this.incumbent.ceiling) return false
    return (field.lanes.twinRank[tube] as number) < field.mostTwins && admits(field, tube)
  }

  private hasCompanions(anchor: number, lastStratum: number): boolean {
    const { companions, bounds } = this
    companions.gather(anchor, lastStratum)
    if (companions.count < this.count - 1) return false
    companions.bound(bounds)
    const { ceiling, best } = this.incumbent
    if (bounds.least < ceiling || best === null) return bounds.least <= ceiling
    const { place } = this.field
    // At best as good as the best one: of use only with an earlier mark, or the same first one.
    const first = best.places[0] as number
    return bounds.least === ceiling && ((place[anchor] as number) <= first || bounds.earliest() <= first)
  }

  private search(anchor: number): void {
    if (!this.hasCompanions(anchor, this.lastStratum)) return
    this.incumbent.offer(this.field, [anchor, ...this.bounds.nearest()])
    const left = this.bounds.within(this.incumbent.ceiling)
    if (left.length >= this.count - 1) this.growth.from(anchor, left)
  }
}
