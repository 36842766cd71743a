/**
 * Every set of an anchor and some of its companions that may still count as little as the best
 * one: companions by rising cost, taken one after the other, left as soon as the spread so far,
 * the costs so far and the next cheapest ones exceed the ceiling.
 *
 * A companion is passed over where one before it was not taken that lies in the box the set
 * spans with it, and is no dearer to buy where that is limited: in its place, the set would count
 * no more, and less or with an earlier mark. Where the sides are to balance, only one of the same
 * x can take its place.
 */
import type { Field } from './field'
import { comparePlaces, type Incumbent, withinY } from './incumbent'
import { spreadCost } from './spread-cost'

type Box = {
  readonly left: number
  readonly right: number
  readonly low: number
  readonly high: number
  readonly spread: number
  readonly cost: number
  readonly price: number
}

export class SetGrowth {
  private readonly chosen: Int32Array
  private readonly count: number
  private readonly capped: boolean
  private readonly balanced: boolean
  private tubes: readonly number[] = []
  /** Of the first 0, 1, 2 … companions together. */
  private costs: readonly number[] = []
  /** The earliest marks from each companion on, rising; made when first asked for. */
  private earliest: readonly (readonly number[])[] = []
  private taken: Uint8Array = new Uint8Array()
  private leastPrice = 0

  constructor(
    private readonly field: Field,
    private readonly incumbent: Incumbent,
  ) {
    this.count = incumbent.terms.count
    this.capped = incumbent.terms.priceCap !== Number.POSITIVE_INFINITY
    this.balanced = incumbent.terms.balance !== null
    this.chosen = new Int32Array(this.count)
  }

  /** `companions` are put in order. */
  from(anchor: number, companions: number[]): void {
    const { x, y, cost, price, place } = this.field
    companions.sort((a, b) => (cost[a] as number) - (cost[b] as number) || (place[a] as number) - (place[b] as number))
    this.tubes = companions
    this.costs = sums(companions.map((tube) => cost[tube] as number))
    this.earliest = []
    this.taken = new Uint8Array(companions.length)
    this.leastPrice = companions.reduce(
      (least, tube) => Math.min(least, price[tube] as number),
      Number.POSITIVE_INFINITY,
    )
    this.chosen[0] = anchor
    const [left, low] = [x[anchor] as number, y[anchor] as number]
    const paid = { cost: cost[anchor] as number, price: price[anchor] as number }
    this.extend(0, this.count - 1, { left, right: left, low, high: low, spread: 0, ...paid })
  }

  private extend(from: number, wanted: number, box: Box): void {
    const { tubes, costs, incumbent } = this
    for (let at = from; at <= tubes.length - wanted; at += 1) {
      const open = (costs[at + wanted] as number) - (costs[at] as number)
      if (this.isIdle(box.spread + box.cost + open, at, wanted)) return
      const tube = tubes[at] as number
      const next = this.grown(box, tube)
      if (next.spread + box.cost + open > incumbent.ceiling || this.isTooWide(next)) continue
      if (this.isNeedless(at, next)) continue
      if (next.price + (wanted - 1) * this.leastPrice > incumbent.terms.priceCap) continue
      this.chosen[this.count - wanted] = tube
      if (wanted === 1) {
        incumbent.offer(this.field, this.chosen)
        continue
      }
      this.taken[at] = 1
      this.extend(at + 1, wanted - 1, next)
      this.taken[at] = 0
    }
  }

  /** All sets from here on count more than the best one, or as much with later marks. */
  private isIdle(bound: number, at: number, wanted: number): boolean {
    const { ceiling, best } = this.incumbent
    if (bound !== ceiling || best === null) return bound > ceiling
    const places = Array.from(this.chosen.subarray(0, this.count - wanted), (tube) => this.field.place[tube] as number)
    places.push(...this.earliestFrom(at).slice(0, wanted))
    return (
      comparePlaces(
        places.sort((a, b) => a - b),
        best.places,
      ) >= 0
    )
  }

  private earliestFrom(at: number): readonly number[] {
    if (this.earliest.length === 0) {
      const { place } = this.field
      let own: readonly number[] = []
      this.earliest = this.tubes
        .toReversed()
        .map((tube) => {
          own = [...own, place[tube] as number].sort((a, b) => a - b).slice(0, this.count)
          return own
        })
        .toReversed()
    }
    return this.earliest[at] ?? []
  }

  private isTooWide({ left, right, low, high }: Box): boolean {
    const { xLimit, yLimit } = this.incumbent.terms
    return right - left > xLimit || !withinY(low, high, yLimit)
  }

  private isNeedless(at: number, { left, right, low, high }: Box): boolean {
    const { x, y, price } = this.field
    const tube = this.tubes[at] as number
    for (let before = 0; before < at; before += 1) {
      if (this.taken[before] === 1) continue
      const other = this.tubes[before] as number
      if (this.capped && (price[other] as number) > (price[tube] as number)) continue
      if (this.balanced && x[other] !== x[tube]) continue
      const inX = (x[other] as number) >= left && (x[other] as number) <= right
      if (inX && (y[other] as number) >= low && (y[other] as number) <= high) return true
    }
    return false
  }

  private grown(box: Box, tube: number): Box {
    const { x, y, cost, price } = this.field
    const left = Math.min(box.left, x[tube] as number)
    const right = Math.max(box.right, x[tube] as number)
    const low = Math.min(box.low, y[tube] as number)
    const high = Math.max(box.high, y[tube] as number)
    return {
      left,
      right,
      low,
      high,
      spread: spreadCost(this.incumbent.terms.scale, right - left, low, high),
      cost: box.cost + (cost[tube] as number),
      price: box.price + (price[tube] as number),
    }
  }
}

function sums(values: readonly number[]): number[] {
  const totals = [0]
  for (const value of values) totals.push((totals.at(-1) as number) + value)
  return totals
}
