/**
 * Some tubes of a laid out stock as the search wants them. What the search lays out for an index
 * takes longer than the search itself, and stays with the index: so the indexes of the last
 * questions stay with the stock. They are looked up by all they are made of, places and costs
 * number by number, so a kept one is the one that would be made.
 */
import type { Running } from './line-up'
import { costsOf, type SetIndex } from './search/set-index'

/** Points by place in the stock. */
export type Costs = Float64Array

/** `inStock`: where each stands in the stock. */
type Points = { readonly all: Omit<SetIndex, 'cost'>; readonly inStock: Int32Array }

/** Indexes of the same tubes share all but their costs. Of both lists the latest stands last. */
type Kept = { readonly places: Int32Array; readonly points: Points; readonly weighed: Weighed[] }
type Weighed = { readonly costs: Costs; readonly index: SetIndex }

const lately = new WeakMap<Running['byCurrent'], Kept[]>()
/** Of all tubes of the stock: one question asks for up to four indexes of it. */
const MOST_KEPT = 4
/** A short stock is sooner laid out than looked up. */
const LONG = 1000

export function indexOf(places: Int32Array, { byCurrent }: Pick<Running, 'byCurrent'>, costs: Costs): SetIndex {
  if (places.length < LONG) return weighedBy(newPoints(places, byCurrent), costs)
  const kept = lately.get(byCurrent) ?? []
  lately.set(byCurrent, kept)
  const same = latest(kept, (each) => sameNumbers(each.places, places))
  const { points, weighed } = same ?? added(kept, { places, points: newPoints(places, byCurrent), weighed: [] })
  const known = latest(weighed, (each) => sameAt(places, each.costs, costs))
  if (known) return known.index
  const index = weighedBy(points, costs)
  weighed.push({ costs, index })
  dropBeyond(kept, MOST_KEPT * byCurrent.place.length)
  return index
}

function added<T>(list: T[], each: T): T {
  list.push(each)
  return each
}

/** Moved to the end where it is found. */
function latest<T>(list: T[], is: (each: T) => boolean): T | undefined {
  const at = list.findIndex(is)
  const [found] = at < 0 ? [] : list.splice(at, 1)
  if (found) list.push(found)
  return found
}

/** Numbers of all indexes together; the one in hand is the last. */
function dropBeyond(kept: Kept[], most: number): void {
  let size = kept.reduce((sum, { places, weighed }) => sum + places.length * weighed.length, 0)
  while (size > most) {
    const [first] = kept
    if (!first) return
    first.weighed.shift()
    size -= first.places.length
    if (first.weighed.length === 0) kept.shift()
  }
}

function sameNumbers(a: Int32Array, b: Int32Array): boolean {
  if (a === b) return true
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
function newPoints(places: Int32Array, byCurrent: Running['byCurrent']): Points {
  const size = places.length
  if (size === byCurrent.place.length) return { all: { size, ...byCurrent }, inStock: byCurrent.place }
  const numberOf = new Int32Array(byCurrent.place.length).fill(-1)
  for (let at = 0; at < size; at += 1) numberOf[places[at] as number] = at
  const [place, x, y, price] = [new Int32Array(size), new Int32Array(size), new Int32Array(size), new Int32Array(size)]
  const inStock = new Int32Array(size)
  let to = 0
  for (let at = 0; at < byCurrent.place.length; at += 1) {
    const there = byCurrent.place[at] as number
    const number = numberOf[there] as number
    if (number < 0) continue
    inStock[to] = there
    place[to] = number
    x[to] = byCurrent.x[at] as number
    y[to] = byCurrent.y[at] as number
    price[to] = byCurrent.price[at] as number
    to += 1
  }
  return { all: { size, place, x, y, price }, inStock }
}

function weighedBy({ all, inStock }: Points, costs: Costs): SetIndex {
  return { ...all, cost: costsOf(costs, inStock) }
}
