/**
 * The plain way to the same answer, written apart from the program: every way
 * of making sets of `size` and singles, once each, with the least cost.
 */
import type { Plane } from '@/lib/domain/pairing/plane'

export function leastCost(plane: Plane, size: number): number {
  const points = plane.x.length
  const memo = new Map<number, number>()
  const from = (used: number): number => {
    if (used === 2 ** points - 1) return 0
    const known = memo.get(used)
    if (known !== undefined) return known
    const first = Array.from({ length: points }, (_, point) => point).find((point) => !(used & (1 << point))) as number
    let least = plane.singleCost + from(used | (1 << first))
    for (const others of subsets(points, first + 1, size - 1, used)) {
      const spread = spreadOf(plane, [first, ...others])
      const mask = others.reduce((bits, point) => bits | (1 << point), used | (1 << first))
      if (spread !== null) least = Math.min(least, spread + from(mask))
    }
    memo.set(used, least)
    return least
  }
  return from(0)
}

/** null: too wide. */
export function spreadOf({ x, y, widthX, widthY }: Plane, members: readonly number[]): number | null {
  const [xs, ys] = [members.map((point) => x[point] as number), members.map((point) => y[point] as number)]
  const [dx, dy] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)]
  return dx > widthX || dy > widthY ? null : dx + dy
}

function* subsets(points: number, from: number, size: number, used: number): Generator<number[]> {
  if (size === 0) {
    yield []
    return
  }
  for (let first = from; first < points; first += 1) {
    if (used & (1 << first)) continue
    for (const rest of subsets(points, first + 1, size - 1, used)) yield [first, ...rest]
  }
}
