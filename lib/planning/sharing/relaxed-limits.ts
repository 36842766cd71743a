/**
 * Why a group can have no set, even from the whole stock: what giving up one limit alone would
 * bring, all others kept, each found by searching anew. Type, base, shorts and rejects are never
 * offered.
 */
import type { MatchLimits } from '@/lib/domain/matching/candidate'
import type { Spreads } from '@/lib/domain/matching/proposal'
import { bestSet } from '@/lib/domain/matching/search/best-set'
import { found } from '@/lib/domain/matching/search/found'
import { nextSets } from '@/lib/domain/matching/search/next-sets'
import { setOption } from '@/lib/domain/matching/set-option'
import { type GroupPlace, orderProblem, WITHIN_COHORT } from './order-problem'
import type { ShareAsk, ShareJob, ShareOrder } from './share-order'

export type RelaxedLimit = 'test-age' | 'printed-rating' | 'price-cap' | 'reserved'

export type RelaxedGroup = {
  readonly group: string
  /** Sets there would be without that limit, sharing no tube; `SHOWN_SETS` means that or more. Those of none are left out. */
  readonly without: readonly { readonly limit: RelaxedLimit; readonly sets: number }[]
  /** Of the closest set there is, however far apart. Null: too few tubes read alike. */
  readonly closest: Spreads | null
  /** Good tubes of the family without a usable record. */
  readonly untested: number
  /** The very type of the sheet is in stock, and its printed volts are below those of the sockets. */
  readonly typeRefused: boolean
}

export const SHOWN_SETS = 5
const OVER_RATING: ReadonlySet<string> = new Set(['plate-voltage-over-rating', 'screen-voltage-over-rating'])

/** Null: a set can be made, so others have taken its tubes. */
export function relaxedGroup(order: ShareOrder, job: ShareJob, ask: ShareAsk): RelaxedGroup | null {
  const alone = { ...order, jobs: [{ ...job, groups: [ask] }] }
  if (setsIn(alone, 1) > 0) return null
  const { groups } = orderProblem(alone)
  const excluded = groups[0]?.excluded ?? []
  return {
    group: ask.group,
    without: VARIANTS.map(({ limit, without }) => ({ limit, sets: setsIn(without(alone), SHOWN_SETS) })).filter(
      ({ sets }) => sets > 0,
    ),
    closest: closest(alone),
    typeRefused: excluded.some(
      ({ candidate, reasons }) =>
        candidate.designation === ask.designation && reasons.some(({ code }) => OVER_RATING.has(code)),
    ),
    untested: excluded.filter(({ reasons }) => reasons.every(({ code }) => code === 'untested')).length,
  }
}

const withLimits = (change: Partial<MatchLimits>) => (order: ShareOrder) => ({
  ...order,
  limits: { ...order.limits, ...change },
})

const VARIANTS: readonly { readonly limit: RelaxedLimit; readonly without: (order: ShareOrder) => ShareOrder }[] = [
  { limit: 'test-age', without: withLimits({ maximumTestAgeDays: null }) },
  { limit: 'printed-rating', without: withLimits({ allowOverPrintedRating: true }) },
  { limit: 'price-cap', without: withLimits({ priceCap: null }) },
  { limit: 'reserved', without: released },
]

function released(order: ShareOrder): ShareOrder {
  const stock = order.stock.map((each) =>
    each.candidate.state.kind === 'reserved'
      ? { ...each, candidate: { ...each.candidate, state: { kind: 'free' } as const } }
      : each,
  )
  return { ...order, stock }
}

function setsIn(order: ShareOrder, most: number): number {
  const [group] = orderProblem(order).problem.groups
  return group ? nextSets(group.index, group.query, [], most).length : 0
}

function closest(order: ShareOrder): Spreads | null {
  const { problem, groups } = orderProblem(order)
  const [asked, group] = [problem.groups[0], groups[0]]
  if (!asked || !group) return null
  const { yLimit: _, ...query } = asked.query
  const set = bestSet(asked.index, { ...query, xLimit: WITHIN_COHORT })
  if (!set) return null
  const places = set.places.map((place) => group.places[place] as GroupPlace)
  const points = places.map(({ point }) => point)
  const { cohort } = places[0] as GroupPlace
  return setOption({ cohort, points, found: found(points) }, group.ask.demand, null).spreads
}
