/**
 * The tubes of an index laid out for the search (anchor-search.ts): strata by cost, the cheapest
 * few first and each about twice as many as all before it; every stratum in lanes, bands of y
 * with about as many tubes each; every lane by rising x.
 *
 * So whoever looks for tubes near one, and the nearer the more they cost, reads a short stretch
 * of few lanes. Where strata and lanes are cut is taken from a sample of the costs and from
 * where y stands among all (levels.ts): it decides how quick the search is, never what it finds.
 */
import { LEVELS, levelsOf } from './levels'
import type { Running } from './running'
import { costEdges, type StrataTerms } from './strata'
import { TWINS, twinRanks } from './twin-ranks'

export type Lanes = {
  readonly strata: number
  /** Of each stratum: the lowest and highest cost, and its first lane (and one more). */
  readonly floor: Float64Array
  readonly roof: Float64Array
  readonly firstLane: Int32Array
  /** Of each lane: its first slot (and one more), the lowest and highest y. Lanes of a stratum by rising y. */
  readonly start: Int32Array
  readonly low: Int32Array
  readonly high: Int32Array
  /** Of each slot. */
  readonly tube: Int32Array
  readonly x: Int32Array
  readonly y: Int32Array
  readonly cost: Float64Array
  /** Of each tube; −1: it can be of no use. */
  readonly laneOf: Int32Array
  readonly twinRank: Uint8Array
  /** Of those in a lane. */
  readonly highestRank: number
  /** Tubes that stand in no lane, those out aside. */
  readonly leftOut: number
  /** A small share of the cheapest, by number, and the last stratum of them. Empty where there are few tubes. */
  readonly share: Int32Array
  readonly shareStratum: number
}

/** The share: at most one in so many. */
const SHARE = 24

/** Where strata are cut goes by the count and the scale, which only decides how quick the search is. */
export type LaneTerms = StrataTerms & {
  /** By place; 1 is left out. */
  readonly out: Uint8Array | null
  /** The price of a set is limited. */
  readonly byPrice: boolean
}

export function layOut(index: Running, terms: LaneTerms): Lanes {
  const { out, byPrice } = terms
  const twinRank = twinRanks(index, out, byPrice)
  const stratumOf = strataOf(index, terms, twinRank)
  const firstLane = firstLanes(stratumOf)
  const laneOf = lanesOf(index.y, stratumOf, firstLane)
  const strata = firstLane.length - 1
  const filled = filledLanes(index, laneOf, firstLane)
  const taken = filled.tube.length
  const gone = out ? out.reduce((sum, each) => sum + each, 0) : 0
  return {
    strata,
    ...costRanges(filled, firstLane),
    firstLane,
    ...filled,
    laneOf,
    twinRank,
    highestRank: highestRank(twinRank),
    leftOut: index.size - gone - taken,
    ...shareOf(laneOf, firstLane, filled.start),
  }
}

function highestRank(twinRank: Uint8Array): number {
  let highest = 0
  for (let tube = 0; tube < twinRank.length; tube += 1) {
    const rank = twinRank[tube] as number
    if (rank < TWINS && rank > highest) highest = rank
  }
  return highest
}

/** Of a tube that is left aside. */
const ASIDE = 255

/** Of each tube. */
function strataOf(index: Running, terms: StrataTerms, twinRank: Uint8Array): Uint8Array {
  const { cost } = index
  const edges = costEdges(index, terms, (tube) => (twinRank[tube] as number) >= TWINS)
  const stratumOf = new Uint8Array(cost.length)
  for (let tube = 0; tube < cost.length; tube += 1) {
    if ((twinRank[tube] as number) >= TWINS) {
      stratumOf[tube] = ASIDE
      continue
    }
    const own = cost[tube] as number
    let stratum = edges.length
    while (stratum > 0 && own < (edges[stratum - 1] as number)) stratum -= 1
    stratumOf[tube] = stratum
  }
  return stratumOf
}

/** Of each stratum, and one more: about half as many lanes as tubes in each. */
function firstLanes(stratumOf: Uint8Array): Int32Array {
  const counts = new Int32Array(ASIDE + 1)
  for (let tube = 0; tube < stratumOf.length; tube += 1) {
    const stratum = stratumOf[tube] as number
    counts[stratum] = (counts[stratum] as number) + 1
  }
  let strata = ASIDE
  while (strata > 0 && counts[strata - 1] === 0) strata -= 1
  const first = new Int32Array(strata + 1)
  for (let stratum = 0; stratum < strata; stratum += 1) {
    first[stratum + 1] = (first[stratum] as number) + Math.ceil(Math.sqrt(counts[stratum] as number) / 2)
  }
  return first
}

/** Of each tube; −1 aside. */
function lanesOf(y: Int32Array, stratumOf: Uint8Array, firstLane: Int32Array): Int32Array {
  const levels = levelsOf(y)
  const laneOf = new Int32Array(y.length)
  for (let tube = 0; tube < laneOf.length; tube += 1) {
    const stratum = stratumOf[tube] as number
    if (stratum === ASIDE) {
      laneOf[tube] = -1
      continue
    }
    const first = firstLane[stratum] as number
    const lanes = (firstLane[stratum + 1] as number) - first
    laneOf[tube] = first + Math.floor(((levels[tube] as number) * lanes) / LEVELS)
  }
  return laneOf
}

type Filled = Pick<Lanes, 'start' | 'low' | 'high' | 'tube' | 'x' | 'y' | 'cost'>

/** By hand: the methods of the arrays that take a function cost several times as much for so many. */
function filledLanes(index: Running, laneOf: Int32Array, firstLane: Int32Array): Filled {
  const lanes = firstLane.at(-1) as number
  const start = startsOf(laneOf, lanes)
  const size = start[lanes] as number
  const [tube, x, y, cost] = [new Int32Array(size), new Int32Array(size), new Int32Array(size), new Float64Array(size)]
  const low = new Int32Array(lanes).fill(2 ** 31 - 1)
  const high = new Int32Array(lanes)
  const slots = start.slice()
  for (let at = 0; at < index.size; at += 1) {
    const lane = laneOf[at] as number
    if (lane < 0) continue
    const slot = slots[lane] as number
    const own = index.y[at] as number
    slots[lane] = slot + 1
    tube[slot] = at
    x[slot] = index.x[at] as number
    y[slot] = own
    cost[slot] = index.cost[at] as number
    if (own < (low[lane] as number)) low[lane] = own
    if (own > (high[lane] as number)) high[lane] = own
  }
  closeEmpty({ low, high }, firstLane)
  return { start, low, high, tube, x, y, cost }
}

/** A lane without tubes ends where the one before it does: so within a stratum both bounds rise from lane to lane. */
function closeEmpty({ low, high }: Pick<Lanes, 'low' | 'high'>, firstLane: Int32Array): void {
  for (let stratum = 0; stratum < firstLane.length - 1; stratum += 1) {
    const end = firstLane[stratum + 1] as number
    let before = 0
    for (let lane = firstLane[stratum] as number; lane < end; lane += 1) {
      if ((low[lane] as number) > (high[lane] as number)) {
        low[lane] = before
        high[lane] = before
      }
      before = high[lane] as number
    }
  }
}

function startsOf(laneOf: Int32Array, lanes: number): Int32Array {
  const start = new Int32Array(lanes + 1)
  for (let at = 0; at < laneOf.length; at += 1) {
    const lane = laneOf[at] as number
    if (lane >= 0) start[lane + 1] = (start[lane + 1] as number) + 1
  }
  for (let lane = 0; lane < lanes; lane += 1) start[lane + 1] = (start[lane + 1] as number) + (start[lane] as number)
  return start
}

function costRanges(
  { cost, start }: Pick<Lanes, 'cost' | 'start'>,
  firstLane: Int32Array,
): Pick<Lanes, 'floor' | 'roof'> {
  const strata = firstLane.length - 1
  const floor = new Float64Array(strata).fill(Number.POSITIVE_INFINITY)
  const roof = new Float64Array(strata).fill(Number.NEGATIVE_INFINITY)
  for (let stratum = 0; stratum < strata; stratum += 1) {
    const end = start[firstLane[stratum + 1] as number] as number
    for (let slot = start[firstLane[stratum] as number] as number; slot < end; slot += 1) {
      const own = cost[slot] as number
      if (own < (floor[stratum] as number)) floor[stratum] = own
      if (own > (roof[stratum] as number)) roof[stratum] = own
    }
  }
  // One without tubes: what comes after it costs no less.
  for (let stratum = strata - 2; stratum >= 0; stratum -= 1) {
    floor[stratum] = Math.min(floor[stratum] as number, floor[stratum + 1] as number)
  }
  return { floor, roof }
}

function shareOf(laneOf: Int32Array, firstLane: Int32Array, start: Int32Array): Pick<Lanes, 'share' | 'shareStratum'> {
  const most = (start.at(-1) as number) / SHARE
  let strata = 0
  while (strata + 1 < firstLane.length - 1 && (start[firstLane[strata + 1] as number] as number) <= most) strata += 1
  const lanes = firstLane[strata] as number
  const share = new Int32Array(start[lanes] as number)
  let count = 0
  for (let tube = 0; tube < laneOf.length && count < share.length; tube += 1) {
    const lane = laneOf[tube] as number
    if (lane >= 0 && lane < lanes) share[count++] = tube
  }
  return { share, shareStratum: strata - 1 }
}
