/** Tubes sorted into bands of y of one height, in the order of x within each band. */
import type { Crowd } from './crowd'

/** Arrays by slot: band after band. */
export type Bands = {
  /** First slot of each band, and one more. */
  readonly start: Int32Array
  readonly members: Int32Array
  readonly x: Int32Array
  readonly y: Int32Array
  readonly cost: Float64Array
}

export type BandGrid = {
  /** Of each tube. */
  readonly bandOf: Int32Array
  readonly count: number
  /** Lowest y of the first band, and the height of all. */
  readonly bottom: number
  readonly tall: number
}

const MOST_BANDS = 20_000

/** `height` at least. */
export function bandGrid({ y }: Crowd, height: number): BandGrid {
  let [bottom, top] = [Number.POSITIVE_INFINITY, 0]
  for (let at = 0; at < y.length; at += 1) {
    const value = y[at] as number
    if (value < bottom) bottom = value
    if (value > top) top = value
  }
  const tall = Math.max(1, Math.ceil((top - bottom + 1) / MOST_BANDS), Math.min(top, height))
  const bandOf = new Int32Array(y.length)
  for (let at = 0; at < y.length; at += 1) bandOf[at] = Math.floor(((y[at] as number) - bottom) / tall)
  return { bandOf, count: Math.floor((top - bottom) / tall) + 1, bottom, tall }
}

/** Those of one class. */
export function bandsOf(crowd: Crowd, { bandOf, count }: BandGrid, classOf: Uint8Array, wanted: number): Bands {
  const start = new Int32Array(count + 1)
  for (let at = 0; at < crowd.size; at += 1) {
    if (classOf[at] === wanted) start[(bandOf[at] as number) + 1] = (start[(bandOf[at] as number) + 1] as number) + 1
  }
  for (let band = 1; band <= count; band += 1) start[band] = (start[band] as number) + (start[band - 1] as number)
  const size = start[count] as number
  const bands = { start, members: new Int32Array(size), x: new Int32Array(size), y: new Int32Array(size) }
  const cost = new Float64Array(size)
  const slots = start.slice()
  for (let at = 0; at < crowd.size; at += 1) {
    if (classOf[at] !== wanted) continue
    const slot = slots[bandOf[at] as number] as number
    slots[bandOf[at] as number] = slot + 1
    bands.members[slot] = at
    bands.x[slot] = crowd.x[at] as number
    bands.y[slot] = crowd.y[at] as number
    cost[slot] = crowd.cost[at] as number
  }
  return { ...bands, cost }
}
