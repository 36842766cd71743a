/** Which lines of a quote were moved: told for the history, of the lines that were there before and still are. */
import type { Change } from '@/lib/domain/history/changes'
import { LINE_KINDS, type LineKind } from './quote'

export type PlacedLine = {
  /** None yet: the line is new. */
  readonly id?: string
  readonly kind: LineKind
  /** What it is called in the history. */
  readonly label: string
}

const namesOf = (lines: readonly PlacedLine[]): string => lines.map(({ label }) => label).join(', ')

/** One change for every kind whose lines stand in another order: "Order of parts: Fuse, Lead → Lead, Fuse". */
export function orderChanges(
  before: readonly PlacedLine[],
  after: readonly PlacedLine[],
  kindWord: (kind: LineKind) => string,
): Change[] {
  return LINE_KINDS.flatMap((kind) => {
    const [was, is] = [onBoth(before, after, kind), onBoth(after, before, kind)]
    if (was.every(({ id }, place) => id === is[place]?.id)) return []
    return [{ label: `Order of ${kindWord(kind)}`, from: namesOf(was), to: namesOf(is) }]
  })
}

function onBoth(lines: readonly PlacedLine[], others: readonly PlacedLine[], kind: LineKind): PlacedLine[] {
  const there = new Set(others.filter((each) => each.kind === kind).map(({ id }) => id))
  return lines.filter((line) => line.kind === kind && line.id !== undefined && there.has(line.id))
}
