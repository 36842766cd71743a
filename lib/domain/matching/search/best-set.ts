/**
 * The best set of 1 to 8 tubes out of an index, exactly:
 *
 *   least  x spread + y spread + Σ (cost + adjustment),   ties to the earliest marks,
 *
 * within a limit on either spread and on what the set may cost to buy.
 *
 * A few of the cheapest tubes are searched first, then five times as many and so on, at last all: each
 * search gives the next a set to beat, so the last looks only at tubes close enough together
 * and cheap enough to win (sieve.ts, anchor-sweep.ts). Whatever the first ones find, the last
 * is complete: what it leaves out exceeds the ceiling by a lower bound.
 */
import { sweepAnchors } from './anchor-sweep'
import { type Adjustments, admitted, type Crowd, cheapestShare, lowest, sum, upTo } from './crowd'
import { Incumbent, type Terms } from './incumbent'
import type { SetIndex } from './set-index'
import { sieved } from './sieve'
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
  /** Points: spread, cost and adjustments. */
  readonly objective: number
  readonly spread: number
  readonly cost: number
  readonly price: number
  readonly xRange: number
  readonly yLowest: number
  readonly yHighest: number
}

const MOST_TUBES = 8
/** Tubes in the smallest share, at most, and how the shares grow. */
const SMALLEST_SHARE = 40
const GROWTH = 5
/** From the last share to all. */
const LAST_GROWTH = 25

export function bestSet(index: SetIndex, query: SetQuery): BestSet | null {
  assertQuery(index, query)
  const terms: Terms = {
    count: query.count,
    scale: query.scale,
    xLimit: query.xLimit ?? Number.POSITIVE_INFINITY,
    yLimit: query.yLimit ?? Number.POSITIVE_INFINITY,
    priceCap: query.priceCap ?? Number.POSITIVE_INFINITY,
  }
  const crowd = admitted(index, {
    adjustments: query.adjustments ?? null,
    excluded: query.excluded ?? null,
    highestPrice: dearest(index, terms),
  })
  if (crowd.size < query.count) return null
  const incumbent = new Incumbent(terms, query.ceiling ?? Number.POSITIVE_INFINITY)
  if (query.count === 1) offerSingle(crowd, incumbent)
  else search(crowd, incumbent)
  return incumbent.best && described(incumbent.best, query)
}

/** What one tube may cost beside the cheapest others; ignores which of them are left out, so errs to the high side. */
function dearest({ price }: SetIndex, { count, priceCap }: Terms): number {
  return priceCap === Number.POSITIVE_INFINITY ? priceCap : priceCap - sum(lowest(price, count - 1))
}

function search(crowd: Crowd, incumbent: Incumbent): void {
  offerCheapest(crowd, crowd.cost, incumbent)
  if (incumbent.terms.priceCap !== Number.POSITIVE_INFINITY) offerCheapest(crowd, crowd.price, incumbent)
  for (const share of shares(crowd)) searchIn(share, incumbent)
  searchIn(crowd, incumbent)
}

function searchIn(crowd: Crowd, incumbent: Incumbent): void {
  if (crowd.size < incumbent.terms.count) return
  const others = sum(lowest(crowd.cost, incumbent.terms.count - 1))
  const able = upTo(crowd, incumbent.ceiling - others)
  sweepAnchors(sievingPays(able, incumbent, others) ? sieved(able, incumbent) : able, incumbent)
}

/**
 * Either way looks at the tubes within a slack of each anchor, so at about its square: the
 * sieve on both sides of it in x, the sweep on one.
 */
function sievingPays({ cost, size }: Crowd, { ceiling, terms }: Incumbent, others: number): boolean {
  let [sieving, sweeping] = [0, 0]
  for (let at = 0; at < size; at += 1) {
    const own = cost[at] as number
    sieving += 2 * Math.max(0, ceiling - terms.count * own) ** 2
    sweeping += Math.max(0, ceiling - own - others) ** 2
  }
  return sieving < sweeping
}

/** Smallest first, each taken out of the next. */
function shares(crowd: Crowd): Crowd[] {
  const all: Crowd[] = []
  for (let size = crowd.size / LAST_GROWTH; size > SMALLEST_SHARE; size /= GROWTH) {
    all.unshift(cheapestShare(all[0] ?? crowd, Math.ceil(size)))
  }
  return all
}

function offerSingle(crowd: Crowd, incumbent: Incumbent): void {
  let best = 0
  for (let at = 1; at < crowd.size; at += 1) {
    const order = (crowd.cost[at] as number) - (crowd.cost[best] as number)
    if (order < 0 || (order === 0 && (crowd.place[at] as number) < (crowd.place[best] as number))) best = at
  }
  incumbent.offer(crowd, [best])
}

/** A set to begin with: the lowest of `values`, however far apart. */
function offerCheapest(crowd: Crowd, values: Float64Array | Int32Array, incumbent: Incumbent): void {
  const { count, priceCap } = incumbent.terms
  const bound = lowest(values, count)[count - 1] as number
  const members: number[] = []
  let price = 0
  for (const equal of [false, true]) {
    for (let at = 0; at < crowd.size && members.length < count; at += 1) {
      if (equal ? values[at] !== bound : (values[at] as number) >= bound) continue
      members.push(at)
      price += crowd.price[at] as number
    }
  }
  if (price <= priceCap) incumbent.offer(crowd, members)
}

type HeldSet = NonNullable<Incumbent['best']>

function described(held: HeldSet, { scale, adjustments }: SetQuery): BestSet {
  const { places, objective, price, xRange, yLowest, yHighest } = held
  const spread = spreadCost(scale, xRange, yLowest, yHighest)
  const adjusted = adjustments ? sum(places.map((place) => adjustments[place] as number)) : 0
  return { places, objective, spread, cost: objective - spread - adjusted, price, xRange, yLowest, yHighest }
}

function assertQuery({ size }: SetIndex, { count, scale, adjustments, excluded }: SetQuery): void {
  if (!Number.isInteger(count) || count < 1 || count > MOST_TUBES) {
    throw new Error(`A set has 1 to ${MOST_TUBES} tubes, got ${count}`)
  }
  assertScale(scale)
  if (adjustments && adjustments.length !== size) throw new Error(`${adjustments.length} adjustments for ${size} tubes`)
  if (excluded && excluded.length !== size) throw new Error(`${excluded.length} exclusions for ${size} tubes`)
}
