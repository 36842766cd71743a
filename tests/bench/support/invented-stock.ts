/**
 * Invented stocks of one type for the bench of choosing: the usual one, and shapes that a search could
 * stumble over. The same every time.
 *
 * The usual one: plate current 70 mA and transconductance 6 mA/V, 10 % and 8 % either way,
 * correlated, read to 0.01 mA and 0.001 mA/V; seven variants from common to rare with their
 * prices, tests up to a year old, predictions known to 2 to 6 mA. Costs are reckoned as
 * tube-costs.ts does, but for the parts that need a whole stock book.
 */
import { USUAL_WEIGHTS } from '@/lib/domain/matching/match-weights'
import type { SetPoints } from '@/lib/domain/matching/search/set-index'
import { generator } from '@/tests/domain/matching/tubes'

export type StockShape = {
  readonly tubes: number
  readonly seed: number
  /** Readings are rounded to these, µA and µS. */
  readonly xStep: number
  readonly yStep: number
  /** All tubes lie about so many middles; 0: about one, spread as a normal stock. */
  readonly clusters: number
  /** No tube costs more than another. */
  readonly free: boolean
  /** Costs are rounded to so many points. */
  readonly costStep: number
  /** Only so many different tubes, each there many times; 0: all different. */
  readonly distinct: number
}

export const USUAL_STOCK: StockShape = {
  tubes: 100_000,
  seed: 20_251_125,
  xStep: 10,
  yStep: 1,
  clusters: 0,
  free: false,
  costStep: 1,
  distinct: 0,
}

const WEIGHTS = USUAL_WEIGHTS['one-trim']

/** Share of the stock and price in minor units. */
const VARIANTS = [
  [0.45, 3400],
  [0.25, 4200],
  [0.15, 5600],
  [0.1, 7800],
  [0.04, 12_500],
  [0.009, 21_000],
  [0.001, 39_000],
] as const

type Arrays = { readonly [Key in 'x' | 'y' | 'price']: Int32Array } & { readonly cost: Float64Array }

export function inventedStock(count: number, shape: StockShape): SetPoints {
  const { tubes, distinct } = shape
  const random = generator(shape.seed)
  const place = placing(random, shape)
  const points: Arrays = {
    x: new Int32Array(tubes),
    y: new Int32Array(tubes),
    price: new Int32Array(tubes),
    cost: new Float64Array(tubes),
  }
  for (let at = 0; at < tubes; at += 1) {
    if (distinct > 0 && at >= distinct) repeat(points, at, Math.floor(random() * distinct))
    else invent(points, at, { random, place, count, shape })
  }
  return points
}

function repeat({ x, y, price, cost }: Arrays, at: number, from: number): void {
  for (const values of [x, y, price, cost]) values[at] = values[from] as number
}

type Placing = () => readonly [number, number]

function placing(random: () => number, { clusters }: StockShape): Placing {
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
  const wide: Placing = () => {
    const strength = normal()
    return [7e4 * (1 + 0.1 * strength), 6000 * (1 + 0.05 * strength + 0.06 * normal())]
  }
  if (clusters === 0) return wide
  const middles = Array.from({ length: clusters }, wide)
  return () => {
    const [x, y] = middles[Math.floor(random() * clusters)] as readonly [number, number]
    return [x + 200 * normal(), y + 15 * normal()]
  }
}

type Inventing = {
  readonly random: () => number
  readonly place: Placing
  readonly count: number
  readonly shape: StockShape
}

function invent({ x, y, price, cost }: Arrays, at: number, { random, place, count, shape }: Inventing): void {
  const [current, slope] = place()
  x[at] = Math.max(5000, shape.xStep * Math.round(current / shape.xStep))
  y[at] = Math.max(500, shape.yStep * Math.round(slope / shape.yStep))
  const [share, asked] = variantAt(random())
  price[at] = Math.round(asked * (0.9 + 0.2 * random()))
  const taken = Math.min(1, count / (share * shape.tubes))
  const half = 2000 + 4000 * random()
  const yardsticks =
    WEIGHTS.price * ((price[at] as number) / 4200) +
    WEIGHTS.rarity * taken +
    WEIGHTS.confidence * (half / 5000) +
    WEIGHTS.age * random()
  const points = (1e6 * yardsticks) / count
  cost[at] = shape.free ? 0 : shape.costStep * Math.round(points / shape.costStep)
}

function variantAt(chance: number): (typeof VARIANTS)[number] {
  let below = 0
  for (const variant of VARIANTS) {
    below += variant[0]
    if (chance < below) return variant
  }
  return VARIANTS[0]
}
