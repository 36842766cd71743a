/**
 * Sets of m from a stock: the least sum of spreads and single costs, with a
 * bound that holds over all sets there are.
 *
 * 1. Relaxed choice: near sets first, then every set the prices call for,
 *    until no set of all there are has a reduced cost below 0. Its value is a
 *    lower bound (`price-bound.ts`).
 * 2. A relaxed choice of 24.5 sets becomes two branches: up to 24, and from 25.
 * 3. In each branch cuts on three points raise the bound (`subset-cuts.ts`), with whatever sets
 *    their prices call for, again out of all there are.
 * 4. Whole choices: rounded from the relaxed ones, made whole bit by bit, and the best there is
 *    among the sets let in.
 * 5. A set whose reduced cost exceeds what lies between the bound and a ceiling cannot be in a
 *    choice below it. All others are listed, and a whole-number program over them finds one, or
 *    lifts the bound to the ceiling; so on until bound and cost meet, or time is up.
 *
 * Deterministic but for the time limit: where that ends the search, the bound
 * says how much is open.
 */
import type { Highs } from 'highs'
import { assertPlane, type Plane } from '@/lib/domain/pairing/plane'
import type { Progress } from '../worker/task'
import { Branch, type Tools } from './branch'
import { Incumbent } from './incumbent'
import { nearSets } from './near-sets'
import { gapOf, type SetPlan } from './set-plan'
import { type Limits, loadSolver, SetProgram } from './set-program'
import { SetSearch } from './set-search'

export type SetOptions = {
  /** Tubes in a set, 2 to 8. */
  readonly size: number
  readonly seconds: number
  /** Milliseconds of a clock that only goes forward. */
  readonly now: () => number
  readonly report?: (progress: Progress) => void
  readonly cancelled?: () => boolean
  /** False: whole choices come from the proof alone. Slower; for looking at the proof. */
  readonly shortcuts?: boolean
}

/** Seconds for a quick whole choice. */
const IMPROVING = 3
/** Part of the time that cuts leave. */
const LEFT_FOR_CHOICES = 0.6

export async function planSets(plane: Plane, options: SetOptions): Promise<SetPlan> {
  return planSetsBy(await loadSolver(), plane, options)
}

/** Without a wait, where the solver is at hand. */
export function planSetsBy(highs: Highs, plane: Plane, options: SetOptions): SetPlan {
  assertPlane(plane)
  const began = options.now()
  const limits: Limits = {
    seconds: () => options.seconds - (options.now() - began) / 1000,
    cancelled: options.cancelled ?? (() => false),
  }
  const incumbent = new Incumbent(plane, options.size)
  let open: readonly Branch[] = []
  const boundOfAll = () => Math.max(0, Math.min(incumbent.cost, ...open.map((branch) => branch.bound)))
  const report = (stage: string, figures: Readonly<Record<string, number>>) => {
    const { cost, sets } = incumbent
    const bound = boundOfAll()
    options.report?.({ stage, figures: { ...figures, chosen: sets.length, cost, bound, gap: gapOf({ cost, bound }) } })
  }
  const program = new SetProgram(highs, limits)
  const { size, shortcuts = true } = options
  const tools: Tools = {
    highs,
    plane,
    search: new SetSearch(plane, size),
    program,
    incumbent,
    limits,
    shortcuts,
    report,
  }
  const most = Math.floor(plane.x.length / options.size)
  const root = new Branch(tools, { least: 0, most }, [...nearSets(plane, options.size)])
  open = [root]
  try {
    const relaxed = root.generate() ? root.relaxed : null
    if (relaxed && root.isOpen) {
      open = [...parts(root, relaxed.chosen)]
      for (const branch of open) branch.generate()
      const nearestFirst = open.toSorted((a, b) => a.bound - b.bound)
      for (const branch of nearestFirst) branch.tighten(LEFT_FOR_CHOICES * options.seconds)
      for (const branch of nearestFirst) branch.improve(Math.min(IMPROVING, options.seconds / 8))
      for (const branch of nearestFirst) branch.settle()
    }
    return outcome(tools, boundOfAll())
  } finally {
    for (const branch of new Set([root, ...open])) branch.dispose()
  }
}

/** The branch, or two where the relaxed number of sets is no whole one. */
function parts(root: Branch, chosen: Float64Array): readonly Branch[] {
  const count = chosen.reduce((sum, share) => sum + share, 0)
  const below = Math.floor(count + 1e-6)
  return count - below < 1e-6 ? [root] : root.split(below)
}

function outcome({ plane, incumbent, limits }: Tools, bound: number): SetPlan {
  const sets = incumbent.sets
    .map(({ members, spread }) => ({ members, spread }))
    .sort((a, b) => (a.members[0] as number) - (b.members[0] as number))
  const taken = new Set(sets.flatMap(({ members }) => members))
  const singles = [...plane.x.keys()].filter((point) => !taken.has(point))
  const { cost } = incumbent
  const ended = cost === bound ? 'optimal' : limits.cancelled() ? 'cancelled' : 'time'
  return { sets, singles, cost, bound, ended }
}
