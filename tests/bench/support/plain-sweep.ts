/**
 * The best set the plain way, as a reference: tubes in the order of x, each in turn the first
 * of a set, and every set of the tubes behind it, depth first, left as soon as its spread, its
 * costs and the cheapest tubes there are exceed the best so far. Exact; no grid, no boxes, no
 * shares of the stock. Ties go to the earlier places.
 */
import type { SetPoints } from '@/lib/domain/matching/search/set-index'
import { type SpreadScale, spreadCost } from '@/lib/domain/matching/search/spread-cost'

export type PlainSet = { readonly places: readonly number[]; readonly objective: number }

type Box = { readonly xRange: number; readonly low: number; readonly high: number; readonly cost: number }

/** `known`: an objective that some set is known to reach; Infinity starts from neighbours in x. */
export function plainSweep(points: SetPoints, count: number, scale: SpreadScale, known: number): PlainSet | null {
  return new PlainSweep(points, count, scale, known).run()
}

class PlainSweep {
  private best: PlainSet | null = null
  private readonly order: number[]
  private readonly least: readonly number[]

  constructor(
    private readonly points: SetPoints,
    private readonly count: number,
    private readonly scale: SpreadScale,
    private ceiling: number,
  ) {
    const { x } = points
    this.order = [...x.keys()].sort((a, b) => (x[a] as number) - (x[b] as number) || a - b)
    const costs = Float64Array.from(points.cost).sort()
    // Of the cheapest 0, 1, 2 … tubes together.
    this.least = Array.from({ length: count + 1 }, (_, k) => costs.subarray(0, k).reduce((sum, each) => sum + each, 0))
  }

  run(): PlainSet | null {
    if (this.ceiling === Number.POSITIVE_INFINITY) this.neighbours()
    for (let at = 0; at < this.order.length; at += 1) {
      const place = this.order[at] as number
      this.extend([place], at + 1, this.grown(null, place))
    }
    return this.best
  }

  private neighbours(): void {
    for (let at = 0; at + this.count <= this.order.length; at += 1) {
      const places = this.order.slice(at, at + this.count)
      const [first, ...others] = places as [number, ...number[]]
      const range = (this.points.x[places.at(-1) ?? first] as number) - (this.points.x[first] as number)
      const box = others.reduce((sofar, place) => this.grown(sofar, place), this.grown(null, first))
      this.offer(places, this.objective({ ...box, xRange: range }))
    }
  }

  private extend(chosen: readonly number[], from: number, box: Box): void {
    if (chosen.length === this.count) {
      this.offer(chosen, this.objective(box))
      return
    }
    const open = this.least[this.count - chosen.length] as number
    const openBeside = this.least[this.count - chosen.length - 1] as number
    for (let at = from; at < this.order.length; at += 1) {
      const place = this.order[at] as number
      const range = (this.points.x[place] as number) - (this.points.x[chosen[0] as number] as number)
      if (spreadCost(this.scale, range, box.low, box.high) + box.cost + open > this.ceiling) return
      const next = this.grown({ ...box, xRange: range }, place)
      if (this.objective(next) + openBeside > this.ceiling) continue
      this.extend([...chosen, place], at + 1, next)
    }
  }

  private grown(box: Box | null, place: number): Box {
    const [y, cost] = [this.points.y[place] as number, this.points.cost[place] as number]
    if (box === null) return { xRange: 0, low: y, high: y, cost }
    return { xRange: box.xRange, low: Math.min(box.low, y), high: Math.max(box.high, y), cost: box.cost + cost }
  }

  private objective({ xRange, low, high, cost }: Box): number {
    return spreadCost(this.scale, xRange, low, high) + cost
  }

  private offer(chosen: readonly number[], objective: number): void {
    if (objective > this.ceiling) return
    const places = [...chosen].sort((a, b) => a - b)
    if (this.best && objective === this.best.objective && !earlier(places, this.best.places)) return
    this.best = { places, objective }
    this.ceiling = objective
  }
}

function earlier(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((place, index) => place !== b[index])
  return at >= 0 && (a[at] as number) < (b[at] as number)
}
