/**
 * The tubes in the running for one demand, by cohort, as columns of whole numbers for the
 * search. A place in the stock is at once its number in the order of marks, so sets from
 * different cohorts compare; a tube becomes an object only once it is in a set.
 */
import type { MatchLimits } from './candidate'
import { type Alike, type CohortFacts, type CohortRule, cohortsOfAlike, type Numbers } from './cohort'
import { placesBy, placesMerged } from './places-by'
import { figureAt, isSaid, type PredictedColumns, predictedAt } from './predicted-columns'
import type { TestedCandidate } from './proposal'
import { scaleFor, type TubePoint } from './ranked-stock'
import { copyRuns, runsOf } from './runs'
import type { Scale } from './search/score'
import type { SetIndex } from './search/set-index'
import { type ChangedStock, type StockInOrder, tubeAt } from './stock-in-order'

export type ScaledCohort = CohortFacts & { readonly scale: Scale }

export type LineUp = ScaledCohort & {
  /** Places in the order of members. */
  readonly members: Numbers
}

/** What is compared, by place: at the test point or as predicted. Of a tube that is not in the running it says nothing. */
export type ComparedFigures = {
  readonly microamps: Int32Array
  /** At least 1. */
  readonly microsiemens: Int32Array
  /** The whole stock by plate current, then place. */
  readonly byCurrent: Pick<SetIndex, 'place' | 'x' | 'y' | 'price'>
}

export type Running = ComparedFigures & { readonly stock: StockInOrder; readonly predicted: PredictedColumns | null }

export function comparedFigures(stock: StockInOrder, predicted: PredictedColumns | null): ComparedFigures {
  const figures = roundedFigures(stock, predicted)
  return laidByCurrent(stock, figures, placesBy(figures.microamps))
}

/** After a change of the stock: only what is new in it is rounded anew. */
export function movedFigures(
  before: ComparedFigures,
  { stock, from }: ChangedStock,
  predicted: PredictedColumns | null,
): ComparedFigures {
  const figures = { microamps: new Int32Array(from.length), microsiemens: new Int32Array(from.length) }
  const runs = runsOf(from)
  copyRuns(figures.microamps, before.microamps, runs)
  copyRuns(figures.microsiemens, before.microsiemens, runs)
  for (let place = 0; place < from.length; place += 1) {
    if ((from[place] as number) < 0) roundAt(figures, place, stock, predicted)
  }
  return laidByCurrent(stock, figures, placesMerged(before.byCurrent.place, from, figures.microamps))
}

type Rounded = Pick<ComparedFigures, 'microamps' | 'microsiemens'>

function laidByCurrent({ price }: StockInOrder, figures: Rounded, place: Int32Array): ComparedFigures {
  const { microamps, microsiemens } = figures
  const byCurrent = {
    place,
    x: inOrder(microamps, place),
    y: inOrder(microsiemens, place),
    price: inOrder(price, place),
  }
  return { ...figures, byCurrent }
}

/** By hand: the method of the array that takes a function costs several times as much for so many. */
function inOrder(figures: Int32Array, places: Int32Array): Int32Array {
  const ordered = new Int32Array(places.length)
  for (let at = 0; at < ordered.length; at += 1) ordered[at] = figures[places[at] as number] as number
  return ordered
}

function roundedFigures(stock: StockInOrder, predicted: PredictedColumns | null): Rounded {
  const size = stock.microamps.length
  const figures = { microamps: new Int32Array(size), microsiemens: new Int32Array(size) }
  for (let place = 0; place < size; place += 1) roundAt(figures, place, stock, predicted)
  return figures
}

function roundAt(
  { microamps, microsiemens }: Rounded,
  place: number,
  stock: StockInOrder,
  predicted: PredictedColumns | null,
): void {
  const said = predicted !== null && isSaid(predicted, place)
  const current = said ? Math.round(1e6 * figureAt(predicted, 'current', place)) : (stock.microamps[place] as number)
  const slope = said ? Math.round(1e6 * figureAt(predicted, 'slope', place)) : (stock.microsiemens[place] as number)
  microamps[place] = current
  microsiemens[place] = Math.max(1, slope)
}

export function lineUps(
  { stock, predicted }: Running,
  usable: Int32Array,
  count: number,
  limits: MatchLimits,
): LineUp[] {
  const rule = { predicted: predicted !== null, oneDesignation: limits.oneDesignation }
  return cohortsOfAlike(alikeIn(stock, usable, rule), rule).map(({ facts, numbers }) => ({
    ...facts,
    members: numbers,
    scale: scaleFor(facts, count, limits),
  }))
}

/** In the order in which their first tubes come. */
function alikeIn(stock: StockInOrder, usable: Int32Array, { predicted, oneDesignation }: CohortRule): Alike[] {
  const [first] = usable
  if (first === undefined) return []
  // Then nothing tells them apart.
  if (predicted && !oneDesignation) return [{ tube: tubeAt(stock, first) as TestedCandidate, numbers: usable }]
  return byKind(stock, usable)
}

function byKind(stock: StockInOrder, usable: Int32Array): Alike[] {
  const { kindOf, kinds } = stock
  const sizes = new Int32Array(kinds.length)
  for (const place of usable) sizes[kindOf[place] as number] = (sizes[kindOf[place] as number] as number) + 1
  const groups = new Map<number, { readonly numbers: Int32Array; size: number }>()
  for (const place of usable) {
    const kind = kindOf[place] as number
    let group = groups.get(kind)
    if (!group) {
      group = { numbers: new Int32Array(sizes[kind] as number), size: 0 }
      groups.set(kind, group)
    }
    group.numbers[group.size++] = place
  }
  return [...groups.values()].map(({ numbers }) => ({
    numbers,
    tube: tubeAt(stock, numbers[0] as number) as TestedCandidate,
  }))
}

export function pointAt({ stock, predicted, microamps, microsiemens }: Running, place: number): TubePoint {
  return {
    tube: tubeAt(stock, place) as TestedCandidate,
    rank: place,
    markRank: place,
    price: stock.price[place] as number,
    predicted: predictedAt(predicted, place),
    microamps: microamps[place] as number,
    microsiemens: microsiemens[place] as number,
  }
}
