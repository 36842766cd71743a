/**
 * Sets to begin with, so that the search has one to beat: neighbours in x within each lane, and
 * where the price of a set is limited, neighbours none of which is dearer than its share of it,
 * and the least dear tubes, however far apart.
 */
import type { Field } from './field'
import type { Incumbent } from './incumbent'
import { admits } from './running'
import { xSpread, ySpread } from './spread-cost'

export function offerFirstSets(field: Field, incumbent: Incumbent): void {
  const { priceCap, count } = incumbent.terms
  offerNeighbours(field, incumbent, Number.POSITIVE_INFINITY)
  if (priceCap === Number.POSITIVE_INFINITY) return
  offerNeighbours(field, incumbent, priceCap / count)
  offerLeastDear(field, incumbent)
}

function offerNeighbours(field: Field, incumbent: Incumbent, highestPrice: number): void {
  const { lanes } = field
  const neighbours = new Neighbours(field, incumbent)
  for (let stratum = 0; stratum < lanes.strata; stratum += 1) {
    const least = incumbent.terms.count * (lanes.floor[stratum] as number)
    const end = lanes.firstLane[stratum + 1] as number
    for (let lane = lanes.firstLane[stratum] as number; lane < end && least <= incumbent.ceiling; lane += 1) {
      neighbours.walk(lane, least, highestPrice)
    }
  }
}

class Neighbours {
  private readonly count: number
  /** The last slots admitted, turn by turn. */
  private readonly ring: Int32Array
  private readonly tubes: Int32Array

  constructor(
    private readonly field: Field,
    private readonly incumbent: Incumbent,
  ) {
    this.count = incumbent.terms.count
    this.ring = new Int32Array(this.count)
    this.tubes = new Int32Array(this.count)
  }

  walk(lane: number, least: number, highestPrice: number): void {
    const { field, ring, count, incumbent } = this
    const { start, x, tube } = field.lanes
    let met = 0
    for (let slot = start[lane] as number, end = start[lane + 1] as number; slot < end; slot += 1) {
      const own = tube[slot] as number
      if (!admits(field, own) || (field.price[own] as number) > highestPrice) continue
      ring[met % count] = slot
      met += 1
      if (met < count) continue
      const range = (x[slot] as number) - (x[ring[met % count] as number] as number)
      const across = xSpread(incumbent.terms.scale, range)
      if (across + least < incumbent.ceiling) this.consider(across)
    }
  }

  private consider(across: number): void {
    const { ring, tubes, incumbent, field } = this
    const { y, cost, tube } = field.lanes
    let total = across
    let low = Number.POSITIVE_INFINITY
    let high = 0
    for (let nth = 0; nth < ring.length; nth += 1) {
      const slot = ring[nth] as number
      total += cost[slot] as number
      low = Math.min(low, y[slot] as number)
      high = Math.max(high, y[slot] as number)
    }
    if (total + ySpread(incumbent.terms.scale, low, high) >= incumbent.ceiling) return
    for (let nth = 0; nth < ring.length; nth += 1) tubes[nth] = tube[ring[nth] as number] as number
    incumbent.offer(field, tubes)
  }
}

function offerLeastDear(field: Field, incumbent: Incumbent): void {
  const { price, size } = field
  const { count } = incumbent.terms
  const least: number[] = []
  for (let tube = 0; tube < size; tube += 1) {
    if (!admits(field, tube)) continue
    if (least.length === count && (price[tube] as number) >= (price[least[count - 1] as number] as number)) continue
    if (least.length === count) least.pop()
    const to = least.findIndex((other) => (price[other] as number) > (price[tube] as number))
    least.splice(to < 0 ? least.length : to, 0, tube)
  }
  if (least.length === count) incumbent.offer(field, least)
}
