/**
 * Sockets that have a place of their own: each keeps it, unless its circle
 * would overlap one that came before it in the list.
 */
import { percent, pointAt } from './chassis-frame'
import { meetsAny, nearestOnGrid, type Point, type Rect, type Shape } from './chassis-packing'
import { type ChassisSocketSpec, reachOf } from './chassis-plan'

export type Given = {
  readonly spec: ChassisSocketSpec
  readonly index: number
  readonly across: number
  readonly depth: number
}

const isPlaced = (value: number | null): value is number => value !== null && Number.isFinite(value)

export function givenSockets(specs: readonly ChassisSocketSpec[]): readonly Given[] {
  return specs.flatMap((spec, index) =>
    isPlaced(spec.across) && isPlaced(spec.depth)
      ? [{ spec, index, across: percent(spec.across), depth: percent(spec.depth) }]
      : [],
  )
}

export type Settled = Given & { readonly at: Point; readonly moved: boolean }

/** The wished place, or the nearest whole one whose circle meets none of `taken`. */
export function settle(outline: Rect, wish: Given, taken: readonly Shape[]): Settled | null {
  const radius = reachOf(wish.spec.base)
  const at = pointAt(outline, wish.across, wish.depth)
  if (!meetsAny([{ ...at, radius }], taken)) return { ...wish, at, moved: false }
  const grid = {
    columns: 100,
    rows: 100,
    from: { x: wish.across, y: wish.depth },
    pointOf: (across: number, depth: number) => pointAt(outline, across, depth),
  }
  const found = nearestOnGrid(at, grid, (candidate) => !meetsAny([{ ...candidate, radius }], taken))
  return found && { ...wish, across: found.column, depth: found.row, at: found.at, moved: true }
}

export function settleAll(outline: Rect, given: readonly Given[]): readonly Settled[] | null {
  const taken: Shape[] = []
  const settled: Settled[] = []
  for (const wish of given) {
    const found = settle(outline, wish, taken)
    if (!found) return null
    taken.push({ ...found.at, radius: reachOf(wish.spec.base) })
    settled.push(found)
  }
  return settled
}
