/** Sets to begin with: each point with any of the points nearest to it. */
import { distanceIn, type Plane } from '@/lib/domain/pairing/plane'
import type { Column } from './set-program'

/** Nearest points beyond those that fill a set. */
const SPARE = 2

export function nearSets(plane: Plane, size: number): readonly Column[] {
  const points = [...plane.x.keys()]
  const found = new Map<string, Column>()
  for (const point of points) {
    const near = points
      .filter((other) => other !== point)
      .sort((a, b) => distanceIn(plane, point, a) - distanceIn(plane, point, b) || a - b)
      .slice(0, size - 1 + SPARE)
    for (const others of choices(near, size - 1)) {
      const members = [point, ...others].sort((a, b) => a - b)
      const column = columnOf(plane, members)
      if (column) found.set(String(members), column)
    }
  }
  return [...found.values()]
}

/** null when it is wider than the plane permits. */
function columnOf({ x, y, widthX, widthY }: Plane, members: readonly number[]): Column | null {
  const [dx, dy] = [extent(x, members), extent(y, members)]
  return dx > widthX || dy > widthY ? null : { members, spread: dx + dy }
}

function extent(values: Int32Array, members: readonly number[]): number {
  const own = members.map((point) => values[point] as number)
  return Math.max(...own) - Math.min(...own)
}

function* choices(items: readonly number[], size: number, from = 0): Generator<number[]> {
  if (size === 0) {
    yield []
    return
  }
  for (let first = from; first <= items.length - size; first += 1) {
    for (const rest of choices(items, size - 1, first + 1)) yield [items[first] as number, ...rest]
  }
}
