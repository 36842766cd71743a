/**
 * The tubes of an index laid out for the search (anchor-search.ts): strata by cost, the cheapest
 * few first and each about twice as many as all before it; every stratum in lanes, bands of y
 * with about as many tubes each; every lane by rising x.
 *
 * So whoever looks for tubes near one, and the nearer the more they cost, reads a short stretch
 * of few lanes. Where strata and lanes are cut is taken from samples: it decides how quick the
 * search is, never what it finds.
 */
import type { Running } from './running'
import { costsOf } from './set-index'
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
  /** Tubes that stand in no lane, those out aside. */
  readonly leftOut: number
  /** A small share of the cheapest, by number, and the last stratum of them. Empty where there are few tubes. */
  readonly share: Int32Array
  readonly shareStratum: number
}

/** The cheapest 1/128, then as many again and so on. */
const HALVINGS = 7
const SMALLEST_STRATUM = 24
/** The share: at most one in so many. */
const SHARE = 24
const SAMPLE = 8192

export type LaneTerms = {
  /** By place; 1 is left out. */
  readonly out: Uint8Array | null
  /** The price of a set is limited. */
  readonly byPrice: boolean
}

export function layOut(index: Running, { out, byPrice }: LaneTerms): Lanes {
  const twinRank = twinRanks(index, out, byPrice)
  const stratumOf = strataOf(index.cost, twinRank)
  const edges = laneEdges(index, twinRank, stratumOf)
  const strata = edges.length
  const firstLane = new Int32Array(strata + 1)
  edges.forEach((lanes, stratum) => {
    firstLane[stratum + 1] = (firstLane[stratum] as number) + lanes.length
  })
  const laneOf = new Int32Array(index.size).fill(-1)
  for (let tube = 0; tube < index.size; tube += 1) {
    if ((twinRank[tube] as number) >= TWINS) continue
    const stratum = stratumOf[tube] as number
    laneOf[tube] = (firstLane[stratum] as number) + lastUpTo(edges[stratum] as Int32Array, index.y[tube] as number)
  }
  const filled = filledLanes(index, laneOf, firstLane[strata] as number)
  const taken = filled.tube.length
  const gone = out ? out.reduce((sum, each) => sum + each, 0) : 0
  const costs = strata === 0 ? NO_COSTS : costRanges(filled, firstLane)
  return {
    strata,
    ...costs,
    firstLane,
    ...filled,
    laneOf,
    twinRank,
    leftOut: index.size - gone - taken,
    ...shareOf(laneOf, firstLane, filled.start),
  }
}

const NO_COSTS = { floor: new Float64Array(), roof: new Float64Array() }

/** Of each tube that is not left aside. */
function strataOf(cost: Float64Array, twinRank: Uint8Array): Uint8Array {
  const edges = costEdges(cost, twinRank)
  const stratumOf = new Uint8Array(cost.length)
  for (let tube = 0; tube < cost.length; tube += 1) {
    let stratum = edges.length
    while (stratum > 0 && (cost[tube] as number) < (edges[stratum - 1] as number)) stratum -= 1
    stratumOf[tube] = stratum
  }
  return stratumOf
}

/** Lowest cost of each stratum but the first; rising, no two alike. */
function costEdges(cost: Float64Array, twinRank: Uint8Array): number[] {
  const step = Math.max(1, Math.floor(cost.length / SAMPLE))
  const sample: number[] = []
  for (let tube = 0; tube < cost.length; tube += step) {
    if ((twinRank[tube] as number) < TWINS) sample.push(cost[tube] as number)
  }
  const rising = Float64Array.from(sample).sort()
  const edges: number[] = []
  for (let halvings = HALVINGS; halvings > 0; halvings -= 1) {
    const part = 2 ** -halvings
    if (part * cost.length < SMALLEST_STRATUM) continue
    const edge = rising[Math.floor(part * rising.length)] as number
    if (edge > (edges.at(-1) ?? (rising[0] as number))) edges.push(edge)
  }
  return edges
}

/** Of each stratum, the lowest y of each lane; the first takes all below. */
function laneEdges({ size, y }: Running, twinRank: Uint8Array, stratumOf: Uint8Array): Int32Array[] {
  const step = Math.max(1, Math.floor(size / SAMPLE))
  const counts: number[] = []
  const samples: number[][] = []
  for (let tube = 0; tube < size; tube += 1) {
    if ((twinRank[tube] as number) >= TWINS) continue
    const stratum = stratumOf[tube] as number
    while (counts.length <= stratum) {
      counts.push(0)
      samples.push([])
    }
    if ((counts[stratum] as number) % step === 0) samples[stratum]?.push(y[tube] as number)
    counts[stratum] = (counts[stratum] as number) + 1
  }
  return samples.map((sample, stratum) => {
    const rising = Int32Array.from(sample).sort()
    const lanes = Math.ceil(Math.sqrt(counts[stratum] as number) / 2)
    const edges = [0]
    for (let lane = 1; lane < lanes; lane += 1) {
      const edge = rising[Math.floor((lane * rising.length) / lanes)] as number
      if (edge > (edges.at(-1) as number)) edges.push(edge)
    }
    return Int32Array.from(edges)
  })
}

function filledLanes(
  index: Running,
  laneOf: Int32Array,
  count: number,
): Pick<Lanes, 'start' | 'low' | 'high' | 'tube' | 'x' | 'y' | 'cost'> {
  const start = new Int32Array(count + 1)
  for (const lane of laneOf) if (lane >= 0) start[lane + 1] = (start[lane + 1] as number) + 1
  for (let lane = 0; lane < count; lane += 1) start[lane + 1] = (start[lane + 1] as number) + (start[lane] as number)
  const tube = new Int32Array(start[count] as number)
  const slots = start.slice()
  for (let at = 0; at < index.size; at += 1) {
    const lane = laneOf[at] as number
    if (lane < 0) continue
    tube[slots[lane] as number] = at
    slots[lane] = (slots[lane] as number) + 1
  }
  const y = tube.map((at) => index.y[at] as number)
  const low = new Int32Array(count)
  const high = new Int32Array(count)
  for (let lane = 0; lane < count; lane += 1) {
    const own = y.subarray(start[lane] as number, start[lane + 1] as number)
    low[lane] = own.reduce((least, each) => Math.min(least, each), 2 ** 31 - 1)
    high[lane] = own.reduce((most, each) => Math.max(most, each), 0)
  }
  return {
    start,
    low,
    high,
    tube,
    x: tube.map((at) => index.x[at] as number),
    y,
    cost: costsOf(index.cost, tube),
  }
}

function costRanges(
  { cost, start }: Pick<Lanes, 'cost' | 'start'>,
  firstLane: Int32Array,
): Pick<Lanes, 'floor' | 'roof'> {
  const floor = new Float64Array(firstLane.length - 1)
  const roof = new Float64Array(firstLane.length - 1)
  for (let stratum = 0; stratum < floor.length; stratum += 1) {
    const own = cost.subarray(start[firstLane[stratum] as number], start[firstLane[stratum + 1] as number])
    floor[stratum] = own.reduce((least, each) => Math.min(least, each), Number.POSITIVE_INFINITY)
    roof[stratum] = own.reduce((most, each) => Math.max(most, each), Number.NEGATIVE_INFINITY)
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

/** Place of the last of the edges at or below a value; the first edge is below all. */
function lastUpTo(edges: Int32Array, value: number): number {
  let low = 0
  for (let high = edges.length; high - low > 1; ) {
    const middle = (low + high) >> 1
    if ((edges[middle] as number) <= value) low = middle
    else high = middle
  }
  return low
}
