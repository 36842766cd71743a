/**
 * What choosing each tube costs beside the spread of its set, in points (a million is one
 * yardstick); the parts and their units are those of MatchWeights, each divided by the number
 * of tubes in the set, so that the set costs their mean.
 */
import type { SocketDemand, TubeTest } from './candidate'
import type { Numbers } from './cohort'
import { ageDays } from './eligibility'
import type { Running } from './line-up'
import type { MatchWeights } from './match-weights'
import { columnOf, isSaid, type PredictedColumns } from './predicted-columns'
import type { TubePoint } from './ranked-stock'
import { POINTS_PER_YARDSTICK } from './search/spread-cost'
import { dayNumber, type StockInOrder } from './stock-in-order'

type Costing = {
  readonly weights: MatchWeights
  readonly demand: Pick<SocketDemand, 'count' | 'aim'>
  /** Microamps in one yardstick. */
  readonly yard: number
  /** Of all tubes in the running, this cohort or not. */
  readonly running: readonly TubePoint[]
  readonly asOf: string
}

const DAYS_PER_YEAR = 365

export function tubeCosts({ weights, demand, yard, running, asOf }: Costing): (point: TubePoint) => number {
  const { count, aim } = demand
  const usual = Math.max(1, median(running.map(({ price }) => price)))
  const ofVariant = counted(running.map(({ tube }) => tube.designation))
  const target = aim === null ? null : Math.round(aim * 1e6)
  const yearsOf = yearsBefore(asOf)
  return ({ tube, microamps, price, predicted }) => {
    const off = predicted && target !== null ? Math.abs(microamps - target) / yard : 0
    const width = predicted
      ? predicted.plateCurrent.high - predicted.plateCurrent.low
      : 2e-6 * (tube.test.carried?.current.share ?? 0) * microamps
    const half = (1e6 * width) / 2 / yard
    const taken = Math.min(1, count / (ofVariant.get(tube.designation) ?? 1))
    const years = yearsOf(tube.test)
    return costPoints(weights, count, { off, shareOfUsual: price / usual, taken, half, years })
  }
}

type CostParts = {
  readonly off: number
  readonly shareOfUsual: number
  readonly taken: number
  readonly half: number
  readonly years: number
}

function costPoints(weights: MatchWeights, count: number, parts: CostParts): number {
  const yardsticks =
    weights.aim * parts.off +
    weights.price * parts.shareOfUsual +
    weights.rarity * parts.taken +
    weights.confidence * parts.half +
    weights.age * parts.years
  return Math.round((POINTS_PER_YARDSTICK * yardsticks) / count)
}

type PlaceCosting = Omit<Costing, 'running'> & {
  readonly running: Running
  /** Places of all cohorts. */
  readonly places: readonly Numbers[]
}

/** The same for a long stock, by place; 0 where a tube is not in the running. Column by column, in the order `costPoints` adds up. */
export function placeCosts(costing: PlaceCosting): Float64Array {
  const { weights, demand, running, places } = costing
  const { stock } = running
  const inTheRunning = new Uint8Array(stock.price.length)
  for (const some of places) for (let at = 0; at < some.length; at += 1) inTheRunning[some[at] as number] = 1
  const yardsticks = new Float64Array(stock.price.length)
  if (weights.aim > 0) addAim(yardsticks, costing)
  if (weights.price > 0) addPrice(yardsticks, costing, inTheRunning)
  if (weights.rarity > 0) addRarity(yardsticks, costing, inTheRunning)
  if (weights.confidence > 0) addDoubt(yardsticks, costing)
  if (weights.age > 0) addAge(yardsticks, costing)
  return inPoints(yardsticks, demand.count, inTheRunning)
}

function addAim(sums: Float64Array, { weights, demand: { aim }, yard, running }: PlaceCosting): void {
  const { predicted, microamps } = running
  if (!predicted || aim === null) return
  const target = Math.round(aim * 1e6)
  for (let place = 0; place < sums.length; place += 1) {
    if (!isSaid(predicted, place)) continue
    sums[place] = weights.aim * (Math.abs((microamps[place] as number) - target) / yard)
  }
}

function addPrice(sums: Float64Array, { weights, running: { stock } }: PlaceCosting, inTheRunning: Uint8Array): void {
  const { price } = stock
  const usual = Math.max(1, medianPrice(stock, inTheRunning))
  for (let place = 0; place < sums.length; place += 1) {
    sums[place] = (sums[place] as number) + weights.price * ((price[place] as number) / usual)
  }
}

function addRarity(sums: Float64Array, costing: PlaceCosting, inTheRunning: Uint8Array): void {
  const { stock } = costing.running
  const { kindOf } = stock
  const takenOf = takenByKind(stock, inTheRunning, costing.demand.count)
  for (let place = 0; place < sums.length; place += 1) {
    sums[place] = (sums[place] as number) + costing.weights.rarity * (takenOf[kindOf[place] as number] as number)
  }
}

function addDoubt(sums: Float64Array, { weights, yard, running }: PlaceCosting): void {
  const { stock, predicted, microamps } = running
  const widths = predicted && currentWidths(predicted)
  const carriedShares = Float64Array.from(stock.kinds, ({ test }) => test?.carried?.current.share ?? 0)
  for (let place = 0; place < sums.length; place += 1) {
    const width =
      predicted && widths && isSaid(predicted, place)
        ? widths(place)
        : 2e-6 * (carriedShares[stock.kindOf[place] as number] as number) * (microamps[place] as number)
    sums[place] = (sums[place] as number) + weights.confidence * ((1e6 * width) / 2 / yard)
  }
}

function currentWidths(predicted: PredictedColumns): (place: number) => number {
  const [low, high] = [columnOf(predicted, 'currentLow'), columnOf(predicted, 'currentHigh')]
  return (place) => {
    const row = predicted.rowOf[place] as number
    return (high[row] as number) - (low[row] as number)
  }
}

function addAge(sums: Float64Array, { weights, running, asOf }: PlaceCosting): void {
  const { testDay } = running.stock
  const today = dayNumber(asOf)
  for (let place = 0; place < sums.length; place += 1) {
    const years = Math.max(0, today - (testDay[place] as number)) / DAYS_PER_YEAR
    sums[place] = (sums[place] as number) + weights.age * years
  }
}

function inPoints(yardsticks: Float64Array, count: number, inTheRunning: Uint8Array): Float64Array {
  for (let place = 0; place < yardsticks.length; place += 1) {
    const points = Math.round((POINTS_PER_YARDSTICK * (yardsticks[place] as number)) / count)
    yardsticks[place] = inTheRunning[place] === 0 ? 0 : points
  }
  return yardsticks
}

function medianPrice({ byPrice, price }: StockInOrder, inTheRunning: Uint8Array): number {
  let size = 0
  for (let place = 0; place < inTheRunning.length; place += 1) size += inTheRunning[place] as number
  let left = Math.floor(size / 2)
  for (const place of byPrice) {
    if (inTheRunning[place] === 0) continue
    if (left === 0) return price[place] as number
    left -= 1
  }
  return 0
}

/** Share that a set takes of the tubes of its variant. */
function takenByKind({ kinds, kindOf }: StockInOrder, inTheRunning: Uint8Array, count: number): Float64Array {
  const ofKind = new Int32Array(kinds.length)
  for (let place = 0; place < kindOf.length; place += 1) {
    const kind = kindOf[place] as number
    ofKind[kind] = (ofKind[kind] as number) + (inTheRunning[place] as number)
  }
  const ofVariant = new Map<string, number>()
  kinds.forEach(({ designation }, kind) => {
    ofVariant.set(designation, (ofVariant.get(designation) ?? 0) + (ofKind[kind] as number))
  })
  return Float64Array.from(kinds, ({ designation }) => Math.min(1, count / (ofVariant.get(designation) || 1)))
}

/** A long stock was tested on few days: each is read once. */
function yearsBefore(asOf: string): (test: TubeTest) => number {
  const known = new Map<string, number>()
  return (test) => {
    const day = test.testedAt.slice(0, 10)
    const years = known.get(day) ?? Math.max(0, ageDays(test, asOf)) / DAYS_PER_YEAR
    known.set(day, years)
    return years
  }
}

function median(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort()
  return sorted[Math.floor(sorted.length / 2)] ?? 0
}

function counted(names: readonly string[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>()
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1)
  return counts
}
