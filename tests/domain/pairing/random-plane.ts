/** Planes for tests: from crowded ones with many equal points to wide ones, with narrow and wide limits. */
import type { Plane } from '@/lib/domain/pairing/plane'
import { generator } from './random-tubes'

const EXTENTS = [3, 10, 100, 5000]

export function randomPlane(seed: number, mostPoints: number, fewestPoints = 0): Plane {
  const random = generator(seed)
  const below = (limit: number) => Math.floor(random() * limit)
  const extent = EXTENTS[seed % EXTENTS.length] as number
  const count = fewestPoints + below(mostPoints - fewestPoints + 1)
  const coordinates = () => Int32Array.from({ length: count }, () => below(extent))
  const width = below(1.3 * extent)
  return {
    x: coordinates(),
    y: coordinates(),
    widthX: width,
    widthY: Math.floor(width * (0.5 + random())),
    // Every third: so dear that one set more is worth any spread.
    singleCost: seed % 3 === 0 ? 4 * count * extent : below(0.7 * extent),
  }
}

/** The same points under other numbers: point `order[i]` becomes point `i`. */
export function shuffled(plane: Plane, seed: number): { readonly plane: Plane; readonly order: readonly number[] } {
  const random = generator(seed)
  const order = [...plane.x.keys()]
    .map((point) => ({ point, key: random() }))
    .sort((a, b) => a.key - b.key)
    .map(({ point }) => point)
  const pick = (values: Int32Array) => Int32Array.from(order, (point) => values[point] as number)
  return { plane: { ...plane, x: pick(plane.x), y: pick(plane.y) }, order }
}
