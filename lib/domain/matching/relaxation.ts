/**
 * When no set was found: what giving up one limit alone would bring. Type,
 * base, shorts and rejects are never offered.
 */
import { type Money, money } from '../money'
import type { MatchLimits, SocketDemand } from './candidate'
import { cohorts, predictedCohorts } from './cohort'
import { ageDays, isTested } from './eligibility'
import type { Exclusion, ExclusionCode, Relaxation, RelaxedLimit, TestedCandidate } from './proposal'

type Situation = {
  readonly usable: readonly TestedCandidate[]
  readonly excluded: readonly Exclusion[]
  readonly demand: SocketDemand
  readonly limits: MatchLimits
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
  const groups = situation.limits.predictions ? 1 : grouped(situation.usable, situation.limits).length
  const tubes = groups > 1 ? situation.usable : []
  const prices = tubes.map((tube) => tube.price)
  return { ...plain, limit: 'test-point', tubes: tubes.length, sets: setsAtPrices(prices, situation) }
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

function cheapestSet(tubes: readonly TestedCandidate[], { demand, limits }: Situation): Money | null {
  const totals = grouped(tubes, limits)
    .filter(({ members }) => members.length >= demand.count)
    .map(({ members }) => total(rising(members.map((tube) => tube.price)).slice(0, demand.count)))
  return totals.length === 0 ? null : money(Math.min(...totals))
}

function setsIn(tubes: readonly TestedCandidate[], situation: Situation): number {
  return total(
    grouped(tubes, situation.limits).map(({ members }) =>
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

const grouped = (tubes: readonly TestedCandidate[], { predictions, oneDesignation }: MatchLimits) =>
  (predictions ? predictedCohorts : cohorts)(tubes, oneDesignation)

const rising = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b)
const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0)
