/**
 * A list of sets made shorter: its own relaxed choice, with cuts, raises the bound, and a set whose
 * reduced cost exceeds what is left between bound and ceiling cannot be in a choice below the
 * ceiling. The list holds every set that can be, so its bound is one for all.
 */
import type { Plane } from '@/lib/domain/pairing/plane'
import type { Cut } from './cut-prices'
import { boundOf, pricesOf, reducedCosts } from './price-bound'
import type { Column, Count, Relaxed, SetProgram } from './set-program'
import { brokenCuts } from './subset-cuts'

export type Narrowing = {
  readonly plane: Plane
  readonly program: SetProgram
  readonly count: Count
  readonly ceiling: number
  readonly columns: readonly Column[]
  readonly cuts: readonly Cut[]
  readonly onRelaxed: (columns: readonly Column[], relaxed: Relaxed) => void
}

export type Narrowed = { readonly columns: readonly Column[]; readonly cuts: readonly Cut[]; readonly bound: number }

const CUT_ROUNDS = 15

export function narrowedList({ plane, program, count, ceiling, columns, cuts, onRelaxed }: Narrowing): Narrowed {
  let now: Narrowed = { columns, cuts, bound: Number.NEGATIVE_INFINITY }
  for (let round = 0; round < CUT_ROUNDS && now.bound < ceiling; round += 1) {
    const { x, singleCost } = plane
    const relaxed = program.relaxed({ points: x.length, singleCost, count, columns: now.columns, cuts: now.cuts })
    if (!relaxed) break
    onRelaxed(now.columns, relaxed)
    const prices = pricesOf(relaxed)
    const reduced = reducedCosts(now.columns, prices, now.cuts)
    const base = boundOf(
      plane,
      prices,
      count,
      reduced.reduce((a, b) => Math.min(a, b), 0),
    )
    const kept = [...now.columns.keys()].filter((place) => base + (reduced[place] as number) < ceiling)
    const bound = kept.length === 0 ? ceiling : Math.max(now.bound, Math.min(ceiling, Math.ceil(base)))
    const left = kept.map((place) => now.columns[place] as Column)
    const chosen = Float64Array.from(kept, (place) => relaxed.chosen[place] as number)
    const broken = brokenCuts(left, chosen, now.cuts)
    now = { columns: left, cuts: [...now.cuts, ...broken], bound }
    if (broken.length === 0) break
  }
  return now
}
