/**
 * Which tubes can stand in one set at all, spread aside: the largest groups of tubes of which any
 * two, and so any number, keep within both limits.
 *
 * A set keeps within them when its tubes lie in a box: x from some lowest to `xLimit` above, y from
 * some lowest to `yLimit` over it. Whatever lies in a smaller box lies in a larger one, so only
 * boxes that no further tube fits into are told. A limit on the price of a set is left aside.
 */
import { withinY } from '@/lib/domain/matching/search/incumbent'
import type { ShareGroup } from '../share-problem'

/** Numbers of tubes in the whole stock, rising. */
export type LimitBox = readonly number[]

type Extent = { readonly left: number; readonly right: number; readonly low: number; readonly high: number }

const EMPTY: Extent = {
  left: Number.POSITIVE_INFINITY,
  right: Number.NEGATIVE_INFINITY,
  low: Number.POSITIVE_INFINITY,
  high: Number.NEGATIVE_INFINITY,
}

/** Of as many tubes as a set has, and more. */
export function limitBoxes(group: ShareGroup): LimitBox[] {
  const { index, tubes, query } = group
  const [{ x, y, place }, fits] = [index, fitting(group)]
  const rows = Array.from({ length: index.size }, (_, row) => row)
  const boxes = new Map<string, LimitBox>()
  for (const first of rows) {
    const left = x[first] as number
    const near = rows.filter((row) => row >= first && (x[row] as number) - left <= xLimitOf(group))
    for (const low of new Set(near.map((row) => y[row] as number))) {
      const inside = near.filter(
        (row) => (y[row] as number) >= low && fits({ left, right: left, low, high: y[row] as number }),
      )
      if (inside.length < query.count || hasRoom(group, inside, rows)) continue
      const box = inside.map((row) => tubes[place[row] as number] as number).sort((a, b) => a - b)
      boxes.set(box.join(), box)
    }
  }
  return [...boxes.values()]
}

/** Whether tubes of the stock are all the group's, enough for a set, and any of them make one. */
export function staysWithin(group: ShareGroup): (box: LimitBox) => boolean {
  const { index, tubes, query } = group
  const fits = fitting(group)
  const rowOf = new Map<number, number>()
  index.place.forEach((place, row) => {
    rowOf.set(tubes[place] as number, row)
  })
  return (box) => {
    if (box.length < query.count) return false
    let extent = EMPTY
    for (const tube of box) {
      const row = rowOf.get(tube)
      if (row === undefined) return false
      extent = widened(group, extent, row)
    }
    return fits(extent)
  }
}

const xLimitOf = ({ query }: ShareGroup): number => query.xLimit ?? Number.POSITIVE_INFINITY

function fitting(group: ShareGroup): (extent: Extent) => boolean {
  const [xLimit, yLimit] = [xLimitOf(group), group.query.yLimit ?? Number.POSITIVE_INFINITY]
  return ({ left, right, low, high }) => right - left <= xLimit && withinY(low, high, yLimit)
}

function widened({ index: { x, y } }: ShareGroup, { left, right, low, high }: Extent, row: number): Extent {
  return {
    left: Math.min(left, x[row] as number),
    right: Math.max(right, x[row] as number),
    low: Math.min(low, y[row] as number),
    high: Math.max(high, y[row] as number),
  }
}

/** Whether one more tube would fit in. */
function hasRoom(group: ShareGroup, inside: readonly number[], rows: readonly number[]): boolean {
  const fits = fitting(group)
  const extent = inside.reduce((all, row) => widened(group, all, row), EMPTY)
  const held = new Set(inside)
  return rows.some((row) => !held.has(row) && fits(widened(group, extent, row)))
}
