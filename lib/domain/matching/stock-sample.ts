/**
 * A stock as points for a picture: all of a short one, of a long one an even share in the
 * order of marks, which says nothing of how strong a tube is, and always the set chosen.
 */
import type { StockPoint } from '../plot/stock-scatter'
import { instrumentKey, samePoint } from './cohort'
import type { Running } from './line-up'
import { isSaid, predictedAt } from './predicted-columns'
import type { SetOption } from './proposal'
import { placeFor } from './stock-in-order'

export type StockSample = {
  /** In the order of marks. */
  readonly points: readonly StockPoint[]
  /** How many the points stand for, themselves included. */
  readonly all: number
  /** One in so many is a point; 1: all are. */
  readonly every: number
}

const MOST_POINTS = 600

export function stockSample(running: Running, chosen: SetOption | null): StockSample {
  const { stock } = running
  const places = placesShown(running, chosen)
  const every = Math.ceil(places.length / MOST_POINTS)
  const inSet = new Set(chosen?.tubes.map(({ candidate }) => placeFor(stock, candidate)))
  const drawn = new Set(places.filter((_, at) => at % every === 0))
  for (const place of inSet) if (places.includes(place)) drawn.add(place)
  const points = [...drawn].sort((a, b) => a - b).map((place) => pointOf(running, place, inSet.has(place)))
  return { points, all: places.length, every }
}

/** Those with both figures; at the test point, readings on other instruments or at other points say nothing beside the set. */
function placesShown({ stock, predicted }: Running, chosen: SetOption | null): Int32Array {
  const { kindOf, microamps, microsiemens } = stock
  const compares = stock.kinds.map(({ test }) => test !== null && (chosen === null || isLike(test, chosen)))
  const places = new Int32Array(kindOf.length)
  let count = 0
  for (let place = 0; place < places.length; place += 1) {
    const isShown = predicted
      ? isSaid(predicted, place)
      : (microamps[place] as number) > 0 &&
        (microsiemens[place] as number) > 0 &&
        compares[kindOf[place] as number] === true
    if (isShown) places[count++] = place
  }
  return places.subarray(0, count)
}

type ReadAlike = Pick<SetOption, 'instrument' | 'testPoint'>

const isLike = (a: ReadAlike, b: ReadAlike): boolean =>
  samePoint(a.testPoint, b.testPoint) && instrumentKey(a.instrument) === instrumentKey(b.instrument)

/** mA and mA/V. */
function pointOf({ stock, predicted }: Running, place: number, chosen: boolean): StockPoint {
  const kind = stock.kinds[stock.kindOf[place] as number]
  const carried = kind?.test?.carried
  const factor = (rate: { readonly factor: number } | null | undefined) => rate?.factor ?? 1
  const said = predictedAt(predicted, place)
  const current = said?.plateCurrent.value ?? (stock.plateCurrent[place] as number) * factor(carried?.current)
  const slope = said?.transconductance.value ?? (stock.transconductance[place] as number) * factor(carried?.slope)
  return {
    tubeId: stock.tubeIds[place] as string,
    mark: stock.marks[place] as string,
    designation: kind?.designation ?? '',
    at: { across: 1000 * current, up: 1000 * slope },
    chosen,
    ...(carried ? { carriedFrom: carried.from } : {}),
  }
}
