import 'server-only'
import { type DemandFault, type GroupDemand, groupDemand } from '@/lib/domain/bench/group-demand'
import { dayInZone } from '@/lib/domain/calendar'
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import { solveFaultText } from '@/lib/domain/circuit/circuit-text'
import type { SolveFault } from '@/lib/domain/circuit/solve-fault'
import type { Job } from '@/lib/domain/job/job'
import { type InstrumentUse, instrumentsOf } from '@/lib/domain/matching/carried-stock'
import type { Running } from '@/lib/domain/matching/line-up'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import type { Proposal, SetOption } from '@/lib/domain/matching/proposal'
import { proposeFrom } from '@/lib/domain/matching/propose-set'
import { fail, ok, type Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import { findCarrying } from '@/lib/store/carrying'
import { stockToChooseFrom } from '@/lib/store/kept/kept-stock'
import { arrangementIn, groupCircuit } from '../bench/group-circuit'
import type { LatestBench } from '../latest-bench'
import type { Limits } from './limits-form'

/** Why tubes are compared at their test points: a whole sentence. */
export type Basis = Result<{ readonly readOn: string }, string>

export type GroupProposal = {
  readonly wanted: GroupDemand
  readonly proposal: Proposal
  readonly basis: Basis
  /** What was chosen from, by the figures that were compared. */
  readonly running: Running
  /** That the stock was read on, the one it is compared on first. */
  readonly instruments: readonly InstrumentUse[]
}

type Asked = {
  readonly group: string
  readonly bench: LatestBench
  readonly job: Job
  readonly shop: Shop
  readonly limits: Limits
}

/** A stock can be long: of the tubes that could not stand in a set so many are told of one by one. */
export const LISTED = 40

/** Worked out anew whenever it is asked for, so a set that somebody took meanwhile is never offered. */
export async function proposeForGroup(asked: Asked): Promise<Result<GroupProposal, DemandFault>> {
  const { group, bench, job, shop, limits } = asked
  const wanted = groupDemand(bench.sheet, group, bench.result, shop)
  if (!wanted.ok) return wanted
  const now = new Date()
  const circuit = limits.at === 'test-point' ? fail(CHOSEN) : await groupCircuit(bench, group, shop)
  const carrying = await findCarrying(limits.on)
  const { running, fault } = await stockToChooseFrom({
    ...{ now, timeZone: shop.timeZone, jobInHand: job.id, catalogue: shop, words: wordsFor(shop.words) },
    family: wanted.value.demand.family,
    circuit: circuit.ok ? circuit.value : null,
    carrying,
  })
  const demand = { ...wanted.value.demand, arrangement: arrangementIn(circuit, wanted.value.demand) }
  const kept = {
    maximumTestAgeDays: limits.age,
    allowOverPrintedRating: limits.over,
    priceCap: limits.cap,
    oneDesignation: limits.one,
    yardsticks: USUAL_YARDSTICKS,
    asOf: dayInZone(now, shop.timeZone),
    carrying,
  }
  const proposal = proposeFrom(running, demand, kept, LISTED)
  const basis = basisOf(circuit, fault, asked)
  const instruments = instrumentsOf(running.stock, carrying)
  return ok({ wanted: { ...wanted.value, demand }, proposal, basis, running, instruments })
}

function basisOf(circuit: Result<AmpCircuit, string>, fault: SolveFault | null, { bench, shop }: Asked): Basis {
  if (!circuit.ok) return circuit
  if (fault) return fail(solveFaultText(fault, wordsFor(shop.words)))
  if (!bench.set) throw new Error('A circuit without readings')
  return ok({ readOn: dayInZone(bench.set.takenAt, shop.timeZone) })
}

const CHOSEN = 'You asked for the test point.'

export const SET_ROLES = ['best', 'safe', 'closest', 'value', 'next'] as const
export type SetRole = (typeof SET_ROLES)[number]
export type ShownSet = { readonly option: SetOption; readonly roles: readonly SetRole[] }

/** The sets shown, best first, none twice: one set may be several of the ready-made choices. */
export function shownSets({ best, safe, closest, leastPrice, next }: Proposal): ShownSet[] {
  const named: readonly (readonly [SetRole, SetOption | null])[] = [
    ['best', best],
    ['safe', safe],
    ['closest', closest],
    ['value', leastPrice],
    ...next.map((option) => ['next', option] as const),
  ]
  const shown = new Map<string, ShownSet>()
  for (const [role, option] of named) {
    if (!option) continue
    const before = shown.get(option.key)
    shown.set(option.key, before ? { ...before, roles: [...before.roles, role] } : { option, roles: [role] })
  }
  return [...shown.values()]
}
