/**
 * When no set was found: what giving up one limit alone would bring. Type,
 * base, shorts and rejects are never offered.
 */
import { type Money, money } from '../money'
import type { MatchLimits, SocketDemand } from './candidate'
import { cohorts, instrumentKey, predictedCohorts } from './cohort'
import { ageDays, isTested } from './eligibility'
import type { Exclusion, ExclusionCode, Relaxation, RelaxedLimit, TestedCandidate } from './proposal'

type Situation = {
  readonly usable: readonly TestedCandidate[]
  readonly excluded: readonly Exclusion[]
  readonly demand: SocketDemand
  readonly limits: MatchLimits
  /** Compared by what they would do in the amplifier. */
  readonly predicted: boolean
}

const KEPT_OUT_BY = {
  'test-age': ['test-too-old'],
  'printed-rating': ['plate-voltage-over-rating', 'screen-voltage-over-rating'],
  'idle-dissipation': ['idle-over-dissipation', 'predicted-over-dissipation'],
  reserved: ['reserved'],
} as const satisfies Partial<Record<RelaxedLimit, readonly ExclusionCode[]>>

export function relaxations(situation: Situation): Relaxation[] {
  const all = [
    ...(['test-age', 'printed-rating', 'idle-dissipation', 'reserved'] as const).map((limit) =>
      withoutLimit(situation, limit),
    ),
    untested(situation),
    oneTestPoint(situation),
    corrected(situation),
    priceCap(situation),
  ]
  return all.filter((each) => each.tubes > 0).sort((a, b) => b.sets - a.sets || b.tubes - a.tubes)
}

const plain = { neededDays: null, neededPrice: null }

function withoutLimit(situation: Situation, limit: keyof typeof KEPT_OUT_BY): Relaxation {
  const freed = heldBy(situation, KEPT_OUT_BY[limit]).filter(isTested)
  const sets = setsIn([...situation.usable, ...freed], situation)
  const neededDays = limit === 'test-age' && sets > 0 ? daysForFirstSet(situation, freed) : null
  return { ...plain, limit, tubes: freed.length, sets, neededDays }
}

/** Tubes kept out by nothing but these codes. */
function heldBy({ excluded }: Situation, codes: readonly ExclusionCode[]) {
  return excluded
    .filter(({ reasons }) => reasons.every((reason) => codes.includes(reason.code)))
    .map((each) => each.candidate)
}

function daysForFirstSet(situation: Situation, aged: readonly TestedCandidate[]): number | null {
  const age = (tube: TestedCandidate) => ageDays(tube.test, situation.limits.asOf)
  const days = [...new Set(aged.map(age))].sort((a, b) => a - b)
  const enough = (limit: number) =>
    setsIn([...situation.usable, ...aged.filter((tube) => age(tube) <= limit)], situation) > 0
  return days.find(enough) ?? null
}

function untested(situation: Situation): Relaxation {
  const tubes = heldBy(situation, ['untested'])
  const prices = tubes.map((tube) => tube.price)
  return { ...plain, limit: 'untested', tubes: tubes.length, sets: setsAtPrices(prices, situation) }
}

function oneTestPoint(situation: Situation): Relaxation {
  const groups = situation.predicted ? 1 : grouped(situation.usable, situation).length
  const tubes = groups > 1 ? situation.usable : []
  const prices = tubes.map((tube) => tube.price)
  return { ...plain, limit: 'test-point', tubes: tubes.length, sets: setsAtPrices(prices, situation) }
}

/** As if a correction were known between all instruments: those that none is known of, and the sets there would be. */
function corrected(situation: Situation): Relaxation {
  const none = { ...plain, limit: 'correction', tubes: 0, sets: 0 } as const
  const { usable, predicted } = situation
  const [first] = instrumentsBy(usable)
  if (predicted || first === undefined) return none
  const others = usable.filter(({ test }) => instrumentKey(test.instrument) !== instrumentKey(first))
  const alike = usable.map((tube) => ({ ...tube, test: { ...tube.test, instrument: first } }))
  return { ...none, tubes: others.length, sets: others.length > 0 ? setsIn(alike, situation) : 0 }
}

/** Most tubes first, then by name. */
function instrumentsBy(tubes: readonly TestedCandidate[]): string[] {
  const counts = new Map<string, number>()
  for (const { test } of tubes) {
    const key = instrumentKey(test.instrument)
    counts.set(key, (counts.get(key) ?? 0) + 1)
  }
  return [...counts].sort(([a, x], [b, y]) => y - x || (a < b ? -1 : 1)).map(([name]) => name)
}

function priceCap(situation: Situation): Relaxation {
  const none = { ...plain, limit: 'price-cap', tubes: 0, sets: 0 } as const
  if (situation.limits.priceCap === null) return none
  const dear = heldBy(situation, ['over-price-cap']).filter(isTested)
  const uncapped = { ...situation, limits: { ...situation.limits, priceCap: null } }
  const all = [...situation.usable, ...dear]
  const neededPrice = cheapestSet(all, uncapped)
  if (neededPrice === null) return none
  return { ...none, tubes: all.length, sets: setsIn(all, uncapped), neededPrice }
}

function cheapestSet(tubes: readonly TestedCandidate[], situation: Situation): Money | null {
  const { count } = situation.demand
  const totals = grouped(tubes, situation)
    .filter(({ members }) => members.length >= count)
    .map(({ members }) => total(rising(members.map((tube) => tube.price)).slice(0, count)))
  return totals.length === 0 ? null : money(Math.min(...totals))
}

function setsIn(tubes: readonly TestedCandidate[], situation: Situation): number {
  return total(
    grouped(tubes, situation).map(({ members }) =>
      setsAtPrices(
        members.map((tube) => tube.price),
        situation,
      ),
    ),
  )
}

/** Sets taken off from the cheap end while they stay under the cap: a lower bound. */
function setsAtPrices(prices: readonly number[], { demand, limits }: Situation): number {
  const sorted = rising(prices)
  const cap = limits.priceCap ?? Number.POSITIVE_INFINITY
  let sets = 0
  while (sorted.length >= (sets + 1) * demand.count) {
    if (total(sorted.slice(sets * demand.count, (sets + 1) * demand.count)) > cap) break
    sets += 1
  }
  return sets
}

const grouped = (tubes: readonly TestedCandidate[], { predicted, limits }: Situation) =>
  (predicted ? predictedCohorts : cohorts)(tubes, limits.oneDesignation)

const rising = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b)
const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0)
