/**
 * Some tubes of a laid out stock as the search wants them. What the search lays out for an index
 * takes longer than the search itself, and stays with the index: so the indexes of the last
 * question stay with the stock. They are looked up by all they are made of, places and costs
 * number by number, so a kept one is the one that would be made.
 */
import type { Running } from './line-up'
import { costsOf, type SetIndex } from './search/set-index'

/** Points by place in the stock. */
export type Costs = Float64Array

type Kept = { readonly places: Int32Array; readonly costs: Costs; readonly index: SetIndex }

/** Latest last. */
const lately = new WeakMap<Running['byCurrent'], Kept[]>()
/** Of all tubes of the stock: one question asks for up to four indexes of it. */
const MOST_KEPT = 4
/** A short stock is sooner laid out than looked up. */
const LONG = 1000

export function indexOf(places: Int32Array, { byCurrent }: Pick<Running, 'byCurrent'>, costs: Costs): SetIndex {
  if (places.length < LONG) return newIndex(places, byCurrent, costs)
  const kept = lately.get(byCurrent) ?? []
  lately.set(byCurrent, kept)
  const at = kept.findIndex((each) => sameNumbers(each.places, places) && sameAt(places, each.costs, costs))
  const [known = { places, costs, index: newIndex(places, byCurrent, costs) }] = at < 0 ? [] : kept.splice(at, 1)
  kept.push(known)
  let size = kept.reduce((sum, each) => sum + each.places.length, 0)
  while (size > MOST_KEPT * byCurrent.place.length) size -= kept.shift()?.places.length ?? size
  return known.index
}

function sameNumbers(a: Int32Array, b: Int32Array): boolean {
  if (a.length !== b.length) return false
  for (let at = 0; at < a.length; at += 1) if (a[at] !== b[at]) return false
  return true
}

function sameAt(places: Int32Array, a: Costs, b: Costs): boolean {
  for (let at = 0; at < places.length; at += 1) {
    const place = places[at] as number
    if (a[place] !== b[place]) return false
  }
  return true
}

/** What `setIndex` makes of these tubes: the stock is in the order of currents already. */
function newIndex(places: Int32Array, byCurrent: Running['byCurrent'], costs: Costs): SetIndex {
  const size = places.length
  if (size === byCurrent.place.length) return { size, ...byCurrent, cost: costsOf(costs, byCurrent.place) }
  const numberOf = new Int32Array(byCurrent.place.length).fill(-1)
  for (let at = 0; at < size; at += 1) numberOf[places[at] as number] = at
  const index = emptyIndex(size)
  let to = 0
  for (let at = 0; at < byCurrent.place.length; at += 1) {
    const place = byCurrent.place[at] as number
    const number = numberOf[place] as number
    if (number < 0) continue
    index.place[to] = number
    index.x[to] = byCurrent.x[at] as number
    index.y[to] = byCurrent.y[at] as number
    index.price[to] = byCurrent.price[at] as number
    index.cost[to] = costs[place] as number
    to += 1
  }
  return index
}

function emptyIndex(size: number): SetIndex {
  const [place, x, y, price] = [new Int32Array(size), new Int32Array(size), new Int32Array(size), new Int32Array(size)]
  return { size, place, x, y, price, cost: new Float64Array(size) }
}
