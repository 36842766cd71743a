/** A whole choice from a relaxed one: the sets chosen most first, then whatever still fits, the cheapest for a tube first. */
import type { Plane } from '@/lib/domain/pairing/plane'
import type { Column, Relaxed } from './set-program'

export function roundedChoice(plane: Plane, columns: readonly Column[], { chosen }: Relaxed): readonly Column[] {
  const order = [...columns.keys()].sort(
    (a, b) =>
      (chosen[b] as number) - (chosen[a] as number) ||
      (columns[a] as Column).spread - (columns[b] as Column).spread ||
      a - b,
  )
  const taken = new Set<number>()
  const sets: Column[] = []
  for (const place of order) {
    const column = columns[place] as Column
    const { members, spread } = column
    if (spread >= members.length * plane.singleCost || members.some((point) => taken.has(point))) continue
    for (const point of members) taken.add(point)
    sets.push(column)
  }
  return sets
}
