/**
 * The cheapest `count` of some tubes whose prices stay within a spend: lowest total cost,
 * then earliest marks, exactly.
 *
 * In order of cost and mark, a tube that `count` tubes before it undercut or equal in price
 * is never needed. Over the rest: depth first, left as soon as the next cheapest tubes cost
 * more than was found or the least dear ones left exceed the spend.
 */
import type { Crowd } from './crowd'
import { comparePlaces } from './incumbent'

type Pick = { readonly members: readonly number[]; readonly cost: number; readonly places: readonly number[] }

export function withinSpend(
  crowd: Crowd,
  members: readonly number[],
  { count, spend, mostCost }: { readonly count: number; readonly spend: number; readonly mostCost: number },
): readonly number[] | null {
  const { cost, place } = crowd
  const rising = [...members].sort(
    (a, b) => (cost[a] as number) - (cost[b] as number) || (place[a] as number) - (place[b] as number),
  )
  return new SpendSearch(crowd, undominated(crowd, rising, count), spend, mostCost).choose(count)
}

function undominated({ price }: Crowd, rising: readonly number[], count: number): number[] {
  return rising.filter((member, at) => {
    let better = 0
    for (let other = 0; other < at && better < count; other += 1) {
      if ((price[rising[other] as number] as number) <= (price[member] as number)) better += 1
    }
    return better < count
  })
}

class SpendSearch {
  private best: Pick | null = null
  private readonly chosen: number[] = []
  /** Lowest price from each place on. */
  private readonly leastPrice: number[]

  constructor(
    private readonly crowd: Crowd,
    private readonly open: readonly number[],
    private readonly spend: number,
    private mostCost: number,
  ) {
    this.leastPrice = new Array<number>(open.length + 1).fill(Number.POSITIVE_INFINITY)
    for (let at = open.length - 1; at >= 0; at -= 1) {
      this.leastPrice[at] = Math.min(this.leastPrice[at + 1] as number, crowd.price[open[at] as number] as number)
    }
  }

  choose(count: number): readonly number[] | null {
    this.extend(0, count, 0, 0)
    return this.best?.members ?? null
  }

  private extend(from: number, wanted: number, cost: number, price: number): void {
    if (wanted === 0) {
      this.offer(cost)
      return
    }
    for (let at = from; at <= this.open.length - wanted; at += 1) {
      if (cost + this.nextCosts(at, wanted) > this.mostCost) return
      if (price + wanted * (this.leastPrice[at] as number) > this.spend) return
      const member = this.open[at] as number
      const paid = price + (this.crowd.price[member] as number)
      if (paid > this.spend) continue
      this.chosen.push(member)
      this.extend(at + 1, wanted - 1, cost + (this.crowd.cost[member] as number), paid)
      this.chosen.pop()
    }
  }

  private nextCosts(from: number, wanted: number): number {
    let total = 0
    for (let at = from; at < from + wanted; at += 1) total += this.crowd.cost[this.open[at] as number] as number
    return total
  }

  private offer(cost: number): void {
    const places = this.chosen.map((member) => this.crowd.place[member] as number).sort((a, b) => a - b)
    if (this.best && cost === this.best.cost && comparePlaces(places, this.best.places) >= 0) return
    this.best = { members: [...this.chosen], cost, places }
    this.mostCost = cost
  }
}
