/**
 * A sharing made better set by set: two sets at a time are given up and chosen anew out of their
 * tubes and those nobody has, in either order, until no two gain by it.
 */
import { bestOfTheRest } from '../first-come'
import { costOf, type ShareColumn, type ShareProblem } from '../share-problem'

export function polished(
  problem: ShareProblem,
  columns: readonly ShareColumn[],
  goesOn: () => boolean,
): readonly ShareColumn[] {
  const now = [...columns]
  const taken = new Uint8Array(problem.tubeCount)
  for (const { tubes } of now) mark(taken, tubes, 1)
  for (let better = true; better; ) {
    better = false
    for (let one = 0; one < now.length; one += 1) {
      for (let other = one + 1; other < now.length && goesOn(); other += 1) {
        if (renewed(problem, now, taken, one, other)) better = true
      }
    }
    if (!goesOn()) break
  }
  return now
}

function mark(taken: Uint8Array, tubes: readonly number[], as: number): void {
  for (const tube of tubes) taken[tube] = as
}

function renewed(problem: ShareProblem, now: ShareColumn[], taken: Uint8Array, one: number, other: number): boolean {
  const [first, second] = [now[one] as ShareColumn, now[other] as ShareColumn]
  mark(taken, [...first.tubes, ...second.tubes], 0)
  const ways = [inTurn(problem, taken, first, second), inTurn(problem, taken, second, first)?.toReversed()]
  const cost = (way: readonly ShareColumn[]) => way.reduce((sum, column) => sum + costOf(column), 0)
  let best: readonly ShareColumn[] = [first, second]
  for (const way of ways) if (way && cost(way) < cost(best)) best = way
  now[one] = best[0] as ShareColumn
  now[other] = best[1] as ShareColumn
  for (const { tubes } of best) mark(taken, tubes, 1)
  return best[0] !== first
}

/** Leaves `taken` as it was. */
function inTurn(
  problem: ShareProblem,
  taken: Uint8Array,
  first: ShareColumn,
  second: ShareColumn,
): ShareColumn[] | null {
  const one = bestOfTheRest(problem, first.group, taken)
  if (!one) return null
  mark(taken, one.tubes, 1)
  const other = bestOfTheRest(problem, second.group, taken)
  mark(taken, one.tubes, 0)
  return other && [one, other]
}
