/** A sharing in the terms of the bench: which job gets which tubes, what goes without, and what would help. */
import type { Socket } from '@/lib/domain/amp/socket'
import type { MatchLimits, TestPoint } from '@/lib/domain/matching/candidate'
import type { Exclusion, SetOption } from '@/lib/domain/matching/proposal'
import { found } from '@/lib/domain/matching/search/found'
import { setOption } from '@/lib/domain/matching/set-option'
import type { PlanBasis } from '@/lib/domain/stock/plan-basis'
import { type Amps, amps, type Siemens, siemens } from '@/lib/domain/units'
import type { ShareColumn, ShareResult } from '../share-out/share-problem'
import { jobsToBuyFor, swapFor, type ToBuy } from '../share-out/shortfall'
import type { GroupPlace, OrderProblem } from './order-problem'
import { type RelaxedGroup, relaxedGroup } from './relaxed-limits'
import type { ShareOrder } from './share-order'

export type PlannedSet = {
  readonly group: string
  readonly designation: string
  readonly option: SetOption
  /** ISO date of the readings of the amplifier that predicted figures rest on; null: compared at the test points. */
  readonly readOn: string | null
  /** Why they were compared at their test points, a sentence; null: they were not. */
  readonly notPredicted: string | null
  readonly sockets: readonly Socket[]
  /** The best set of what nobody was given; its loss is against this one. Null: nothing left would do. */
  readonly swap: SetOption | null
}

export type PlannedJob = {
  readonly jobNumber: string
  /** What the set was chosen by. Null: nobody accepts this plan. */
  readonly basis: PlanBasis | null
  /** Null: it goes without. */
  readonly sets: readonly PlannedSet[] | null
  /** Groups that would have no set even if all the stock were theirs, and what giving up one limit would bring. */
  readonly impossible: readonly RelaxedGroup[]
}

/** Inclusive, so that a bought tube makes a set with those that are there. */
export type Near = {
  readonly marks: readonly string[]
  /** Currents and transconductance are those of the amplifier, not of a test point. */
  readonly predicted: boolean
  readonly instrument: string
  readonly testPoint: TestPoint
  readonly lowestCurrent: Amps
  readonly highestCurrent: Amps
  /** Null: not measured on those that are there. */
  readonly transconductance: { readonly lowest: Siemens; readonly highest: Siemens } | null
}

export type BuyLine = {
  readonly group: string
  readonly designation: string
  readonly count: number
  /** Null: nothing is there to match. */
  readonly near: Near | null
}

/** In the order in which they are cheapest to serve, each counting what the ones before it use up. */
export type BuyStep = {
  readonly jobNumber: string
  readonly tubes: number
  readonly lines: readonly BuyLine[]
  /** Tubes of the type stand no better there than those in stock: a printed rating refuses them. */
  readonly ratingRefuses: boolean
}

export type ShareProof = Pick<
  ShareResult,
  'jobsServed' | 'jobsAtMost' | 'cost' | 'costAtLeast' | 'gapPercent' | 'greedy' | 'stop'
>

export type SharePlan = {
  readonly limits: MatchLimits
  readonly jobs: readonly PlannedJob[]
  readonly buy: readonly BuyStep[]
  readonly leftOut: readonly Exclusion[]
  readonly proof: ShareProof
}

export function sharePlan(order: ShareOrder, built: OrderProblem, result: ShareResult): SharePlan {
  const { chosen, jobsServed, jobsAtMost, cost, costAtLeast, gapPercent, greedy, stop } = result
  const jobs = order.jobs.map((one, job): PlannedJob => {
    const { jobNumber, basis } = one
    const groups = built.groups.flatMap((group, at) => (group.job === job ? [at] : []))
    const sets = groups.flatMap((at) => plannedSet(built, chosen, at) ?? [])
    const served = sets.length === groups.length && sets.length > 0
    const impossible = served ? [] : one.groups.flatMap((ask) => relaxedGroup(order, one, ask) ?? [])
    return { jobNumber, basis, sets: served ? sets : null, impossible }
  })
  return {
    limits: order.limits,
    jobs,
    buy: jobsToBuyFor(built.problem, chosen).map(({ job, tubes, groups }) => ({
      jobNumber: order.jobs[job]?.jobNumber ?? '',
      tubes,
      ratingRefuses: (jobs[job]?.impossible ?? []).some(({ typeRefused }) => typeRefused),
      lines: groups.filter(({ count }) => count > 0).map((each) => buyLine(built, order.limits, each)),
    })),
    leftOut: built.leftOut,
    proof: { jobsServed, jobsAtMost, cost, costAtLeast, gapPercent, greedy, stop },
  }
}

function plannedSet(built: OrderProblem, chosen: ShareResult['chosen'], at: number): PlannedSet | null {
  const column = chosen[at]
  const group = built.groups[at]
  if (!column || !group) return null
  const option = optionOf(built, column, null)
  const swap = swapFor(built.problem, chosen, at)
  const { group: name, designation, predictions, circuit, sockets } = group.ask
  const readOn = predictions?.readOn ?? null
  const notPredicted = predictions || circuit.ok ? null : circuit.fault
  return {
    ...{ group: name, designation, option, readOn, notPredicted, sockets },
    swap: swap && optionOf(built, swap.instead, option),
  }
}

const placesOf = (built: OrderProblem, { group, set }: ShareColumn): GroupPlace[] =>
  set.places.map((place) => built.groups[group]?.places[place] as GroupPlace)

function optionOf(built: OrderProblem, column: ShareColumn, against: SetOption | null): SetOption {
  const places = placesOf(built, column)
  const points = places.map(({ point }) => point)
  const { cohort } = places[0] as GroupPlace
  const group = built.groups[column.group] as OrderProblem['groups'][number]
  return setOption({ cohort, points, found: found(points) }, group.ask.demand, against)
}

function buyLine(built: OrderProblem, limits: MatchLimits, { group, count, beside }: ToBuy): BuyLine {
  const { ask } = built.groups[group] as OrderProblem['groups'][number]
  return { group: ask.group, designation: ask.designation, count, near: beside && near(built, limits, beside) }
}

function near(built: OrderProblem, { yardsticks }: MatchLimits, column: ShareColumn): Near {
  const places = placesOf(built, column)
  const { cohort } = places[0] as GroupPlace
  const currents = places.map(({ point }) => point.microamps)
  const slopes = places.map(({ point }) => point.microsiemens)
  const [yard, factor] = [Math.round(yardsticks.plateCurrent * 1e6), 1 + yardsticks.transconductance]
  return {
    marks: places.map(({ point }) => point.tube.mark),
    predicted: cohort.predicted,
    instrument: cohort.instrument,
    testPoint: cohort.testPoint,
    lowestCurrent: amps(Math.max(0, Math.max(...currents) - yard) / 1e6),
    highestCurrent: amps((Math.min(...currents) + yard) / 1e6),
    transconductance: cohort.measured
      ? {
          lowest: siemens(Math.ceil(Math.max(...slopes) / factor) / 1e6),
          highest: siemens(Math.floor(Math.min(...slopes) * factor) / 1e6),
        }
      : null,
  }
}
