/**
 * A whole choice from relaxed ones: the sets that are chosen most are fixed,
 * the rest is chosen anew, with whatever further sets of the points left its
 * prices call for, and so on until nothing is left in parts.
 */
import type { Column, Relaxed, SetProblem, SetProgram } from './set-program'

export type Dive = {
  readonly program: SetProgram
  readonly problem: SetProblem
  readonly from: Relaxed
  /** Further sets of points not taken that would lower the relaxed cost. */
  readonly further: (relaxed: Relaxed, taken: ReadonlySet<number>) => readonly Column[]
}

/** At this share a set is as good as chosen. */
const NEARLY = 0.95
/** Of those below, so many are fixed at once, if more than half chosen; one in any case. */
const AT_ONCE = 4
const HALF = 0.5
/** How often further sets are asked for between fixings. */
const REFILLS = 3

/** null when time was up. */
export function dive({ program, problem, from, further }: Dive): readonly Column[] | null {
  const columns = [...problem.columns]
  const fixed = new Set<number>()
  const taken = new Set<number>()
  for (let relaxed: Relaxed | null = from; relaxed; ) {
    const next = nextFixed(columns, relaxed, fixed, taken)
    if (next.length === 0) return [...fixed].map((place) => columns[place] as Column)
    for (const place of next) {
      fixed.add(place)
      for (const point of (columns[place] as Column).members) taken.add(point)
    }
    relaxed = program.relaxed({ ...problem, columns, fixed })
    for (let refill = 0; relaxed && refill < REFILLS; refill += 1) {
      const more = further(relaxed, taken)
      if (more.length === 0) break
      columns.push(...more)
      relaxed = program.relaxed({ ...problem, columns, fixed })
    }
  }
  return null
}

function nextFixed(
  columns: readonly Column[],
  { chosen }: Relaxed,
  fixed: ReadonlySet<number>,
  taken: ReadonlySet<number>,
): readonly number[] {
  const order = [...columns.keys()]
    .filter((place) => (chosen[place] as number) > 1e-6 && !fixed.has(place))
    .sort((a, b) => (chosen[b] as number) - (chosen[a] as number) || a - b)
  const used = new Set(taken)
  const next: number[] = []
  let doubtful = 0
  for (const place of order) {
    const { members } = columns[place] as Column
    const share = chosen[place] as number
    if (share < NEARLY && doubtful > 0 && (share < HALF || doubtful >= AT_ONCE)) break
    if (members.some((point) => used.has(point))) continue
    if (share < NEARLY) doubtful += 1
    for (const point of members) used.add(point)
    next.push(place)
  }
  return next
}
