/** The tubes in the running, laid out for the search. */
import type { Terms } from './incumbent'
import { type Lanes, type LaneTerms, layOut } from './lanes'
import { countOut, type Running } from './running'
import { TWINS } from './twin-ranks'

export type Field = Running & {
  readonly lanes: Lanes
  /** Of tubes of one reading only those of a lower rank can be of use. */
  readonly mostTwins: number
}

export function fieldOf(running: Running, { count, scale, priceCap }: Terms): Field {
  const out = countOut(running.excluded)
  const terms = { count, scale, byPrice: priceCap !== Number.POSITIVE_INFINITY }
  const kept = keptLanes(running, terms)
  // Of those left aside none moves up as long as fewer are out than stand before them.
  if (kept.leftOut === 0 || out <= TWINS - count) return field(running, kept, count + out)
  return field(running, layOut(running, { ...terms, out: running.excluded }), count)
}

type Kept = Pick<Running, 'x' | 'y' | 'price' | 'place'> & { readonly lanes: Lanes }

/** By array of costs, laid out once, so that a kept index answers the next query at once. */
const laidOut = { plainly: new WeakMap<Float64Array, Kept>(), byPrice: new WeakMap<Float64Array, Kept>() }

function keptLanes({ x, y, price, place, cost, ...running }: Running, terms: Omit<LaneTerms, 'out'>): Lanes {
  const kept = terms.byPrice ? laidOut.byPrice : laidOut.plainly
  const known = kept.get(cost)
  if (known && known.x === x && known.y === y && known.price === price && known.place === place) return known.lanes
  const lanes = layOut({ ...running, x, y, price, place, cost }, { ...terms, out: null })
  kept.set(cost, { x, y, price, place, lanes })
  return lanes
}

/** One literal: what is made by spreading is read a third more slowly in the loops of the search. */
function field(running: Running, lanes: Lanes, mostTwins: number): Field {
  const { size, x, y, price, place, cost, excluded, highestPrice, allIn } = running
  return { size, x, y, price, place, cost, excluded, highestPrice, allIn, lanes, mostTwins }
}
