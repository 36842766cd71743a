/** The best whole choice so far. */
import type { Plane } from '@/lib/domain/pairing/plane'
import type { Column } from './set-program'

export class Incumbent {
  sets: readonly Column[] = []
  cost: number

  constructor(
    private readonly plane: Plane,
    private readonly size: number,
  ) {
    this.cost = plane.x.length * plane.singleCost
  }

  /** True when it is better. */
  offer(sets: readonly Column[]): boolean {
    const spread = sets.reduce((sum, set) => sum + set.spread, 0)
    const cost = spread + (this.plane.x.length - this.size * sets.length) * this.plane.singleCost
    if (cost >= this.cost) return false
    this.cost = cost
    this.sets = sets
    return true
  }
}
