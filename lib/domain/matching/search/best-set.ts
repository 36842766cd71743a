/**
 * The best set of 1 to 8 tubes out of an index, exactly:
 *
 *   least  x spread + y spread + Σ (cost + adjustment) + balance of the sides,
 *
 * ties to the earliest marks, within a limit on either spread and on what the set may cost to
 * buy. How it is found: anchor-search.ts. Whatever is left out exceeds the best set found by a
 * lower bound.
 */
import { searchAnchors } from './anchor-search'
import { fieldOf } from './field'
import { type Held, Incumbent, type Terms } from './incumbent'
import { type Adjustments, admits, type Running, runningOf } from './running'
import type { SetIndex } from './set-index'
import type { SideBalance } from './side-balance'
import { assertScale, type SpreadScale, spreadCost } from './spread-cost'

export type SetQuery = {
  readonly count: number
  readonly scale: SpreadScale
  /** Highest less lowest x, inclusive. */
  readonly xLimit?: number
  /** Highest over lowest y less one, in ten-thousandths, inclusive. */
  readonly yLimit?: number
  /** For the whole set, inclusive. */
  readonly priceCap?: number
  /** Left out: the sides of a set weigh nothing. Only for even counts. */
  readonly balance?: SideBalance
  /** Whole points added to the cost of each place, of either sign. */
  readonly adjustments?: Adjustments
  /** Per place: 1 is left out. */
  readonly excluded?: Uint8Array
  /** Sets with a higher objective are of no use; the lower, the quicker. */
  readonly ceiling?: number
}

export type BestSet = {
  /** Rising. */
  readonly places: readonly number[]
  /** Points: spread, cost, adjustments and balance. */
  readonly objective: number
  readonly spread: number
  readonly cost: number
  /** Only where the query weighs it. */
  readonly balance?: number
  readonly price: number
  readonly xRange: number
  readonly yLowest: number
  readonly yHighest: number
}

const MOST_TUBES = 8

export function bestSet(index: SetIndex, query: SetQuery): BestSet | null {
  assertQuery(index, query)
  if (index.size < query.count) return null
  return withinCap(query, (priceCap) => held(index, query, priceCap))
}

/** Found sooner without a limit on the price; most often it keeps it, and is then the best with it. */
export function withinCap(query: SetQuery, find: (priceCap: number) => Held | null): BestSet | null {
  const { priceCap = Number.POSITIVE_INFINITY } = query
  const unlimited = find(Number.POSITIVE_INFINITY)
  const best = unlimited && unlimited.price > priceCap ? find(priceCap) : unlimited
  return best && described(best, query)
}

function held(index: SetIndex, query: SetQuery, priceCap: number): Held | null {
  const terms = termsOf(query, priceCap)
  const running = inTheRunning(index, terms, query)
  const incumbent = new Incumbent(terms, query.ceiling ?? Number.POSITIVE_INFINITY)
  if (query.count === 1) return single(running, incumbent)
  searchAnchors(fieldOf(running, terms), incumbent)
  return incumbent.best
}

export const termsOf = ({ count, scale, xLimit, yLimit, balance }: SetQuery, priceCap: number): Terms => ({
  count,
  scale,
  xLimit: xLimit ?? Number.POSITIVE_INFINITY,
  yLimit: yLimit ?? Number.POSITIVE_INFINITY,
  priceCap,
  balance: balance && balance.weight > 0 ? balance : null,
})

export function inTheRunning(
  index: SetIndex,
  terms: Terms,
  { adjustments, excluded }: Pick<SetQuery, 'adjustments' | 'excluded'>,
): Running {
  return runningOf(index, {
    adjustments: adjustments ?? null,
    excluded: excluded ?? null,
    highestPrice: dearest(index, terms),
  })
}

/** What one tube may cost beside the cheapest others; ignores which of them are left out, so errs to the high side. */
function dearest({ price }: SetIndex, { count, priceCap }: Terms): number {
  if (priceCap === Number.POSITIVE_INFINITY) return priceCap
  const least: number[] = []
  for (let at = 0; at < price.length; at += 1) {
    const own = price[at] as number
    if (least.length === count - 1 && own >= (least.at(-1) ?? 0)) continue
    const to = least.findIndex((each) => each > own)
    least.splice(to < 0 ? least.length : to, 0, own)
    least.length = Math.min(least.length, count - 1)
  }
  return priceCap - least.reduce((total, each) => total + each, 0)
}

export function single(running: Running, incumbent: Incumbent): Held | null {
  const { cost, place, size } = running
  let best = -1
  for (let at = 0; at < size; at += 1) {
    if (!admits(running, at)) continue
    const order = best < 0 ? -1 : (cost[at] as number) - (cost[best] as number)
    if (order < 0 || (order === 0 && (place[at] as number) < (place[best] as number))) best = at
  }
  if (best >= 0) incumbent.offer(running, [best])
  return incumbent.best
}

function described(held: Held, { scale, adjustments, balance: weighed }: SetQuery): BestSet {
  const { places, objective, balance, price, xRange, yLowest, yHighest } = held
  const spread = spreadCost(scale, xRange, yLowest, yHighest)
  const adjusted = adjustments ? places.reduce((total, place) => total + (adjustments[place] as number), 0) : 0
  const cost = objective - spread - adjusted - balance
  const set = { places, objective, spread, cost, price, xRange, yLowest, yHighest }
  return weighed ? { ...set, balance } : set
}

export function assertQuery({ size }: SetIndex, { count, scale, balance, excluded }: SetQuery): void {
  if (!Number.isInteger(count) || count < 1 || count > MOST_TUBES) {
    throw new Error(`A set has 1 to ${MOST_TUBES} tubes, got ${count}`)
  }
  assertScale(scale)
  if (balance && count % 2 === 1) throw new Error(`${count} tubes have no sides of equal number`)
  if (
    balance &&
    !(Number.isInteger(balance.weight) && balance.weight >= 0 && Number.isInteger(balance.yard) && balance.yard > 0)
  ) {
    throw new Error(`Balance of sides: ${JSON.stringify(balance)}`)
  }
  if (excluded && excluded.length !== size) throw new Error(`${excluded.length} exclusions for ${size} tubes`)
}
