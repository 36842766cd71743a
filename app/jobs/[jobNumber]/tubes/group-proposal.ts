import 'server-only'
import { cache } from 'react'
import { type DemandFault, type GroupDemand, groupDemand } from '@/lib/domain/bench/group-demand'
import { dayInZone } from '@/lib/domain/calendar'
import { type AmpCircuit, ampCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import { circuitFaultText, solveFaultText } from '@/lib/domain/circuit/circuit-text'
import type { Job } from '@/lib/domain/job/job'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import type { SetArrangement } from '@/lib/domain/matching/match-weights'
import type { Predictions } from '@/lib/domain/matching/predicted-tube'
import type { Proposal, SetOption } from '@/lib/domain/matching/proposal'
import { proposeSet } from '@/lib/domain/matching/propose-set'
import { fail, ok, type Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { candidateOf } from '@/lib/domain/stock/candidate-of'
import { stockPredictions } from '@/lib/domain/stock/stock-predictions'
import type { StockedTube } from '@/lib/domain/stock/tube'
import { wordsFor } from '@/lib/domain/words'
import { listFittingsOfAmp } from '@/lib/store/fitting'
import { listStockForFamily } from '@/lib/store/tube'
import { knownCircuit } from '../bench/known-circuit'
import type { LatestBench } from '../latest-bench'
import type { Limits } from './limits-form'

/** Why tubes are compared at their test points: a whole sentence. */
export type Basis = Result<Predictions, string>

export type GroupProposal = {
  readonly wanted: GroupDemand
  readonly proposal: Proposal
  readonly basis: Basis
  readonly stock: readonly StockedTube[]
}

type Asked = {
  readonly group: string
  readonly bench: LatestBench
  readonly job: Job
  readonly shop: Shop
  readonly limits: Limits
}

const stockOf = cache(listStockForFamily)

/** Worked out anew whenever it is asked for, so a set that somebody took meanwhile is never offered. */
export async function proposeForGroup(asked: Asked): Promise<Result<GroupProposal, DemandFault>> {
  const { group, bench, job, shop, limits } = asked
  const wanted = groupDemand(bench.sheet, group, bench.result, shop)
  if (!wanted.ok) return wanted
  const now = new Date()
  const stock = await stockOf(wanted.value.demand.family)
  const candidates = stock.map((tube) =>
    candidateOf(tube, { now, timeZone: shop.timeZone, jobInHand: job.id, catalogue: shop }),
  )
  const circuit = limits.at === 'test-point' ? fail(CHOSEN) : await circuitOf(asked)
  const basis = circuit.ok ? predictionsIn(circuit.value, stock, asked, now) : circuit
  const demand = { ...wanted.value.demand, arrangement: arrangementIn(circuit, wanted.value) }
  const proposal = proposeSet(candidates, demand, {
    maximumTestAgeDays: limits.age,
    allowOverPrintedRating: limits.over,
    priceCap: limits.cap,
    oneDesignation: limits.one,
    yardsticks: USUAL_YARDSTICKS,
    asOf: dayInZone(now, shop.timeZone),
    ...(basis.ok ? { predictions: basis.value } : {}),
  })
  return ok({ wanted: { ...wanted.value, demand }, proposal, basis, stock })
}

const CHOSEN = 'You asked for the test point.'

/** As read last, with the very tubes that sat there. */
async function circuitOf({ bench, group, shop }: Asked): Promise<Result<AmpCircuit, string>> {
  const { sheet, set } = bench
  if (!set) return fail('The amplifier has not been read, so its circuit is not known.')
  const fittings = await listFittingsOfAmp(sheet.amp.id)
  const known = await knownCircuit({ sheet, fittings, set }, shop)
  const circuit = ampCircuit({ ...known, group })
  return circuit.ok ? circuit : fail(circuitFaultText(circuit.fault, wordsFor(shop.words)))
}

function predictionsIn(circuit: AmpCircuit, stock: readonly StockedTube[], { bench, shop }: Asked, now: Date): Basis {
  if (!bench.set) throw new Error('A circuit without readings')
  const words = wordsFor(shop.words)
  const readOn = dayInZone(bench.set.takenAt, shop.timeZone)
  const found = stockPredictions(stock, circuit, { catalogue: shop, now, words, readOn })
  return found.ok ? found : fail(solveFaultText(found.fault, words))
}

/** Grids that read apart have an adjustment each. */
function arrangementIn(circuit: Result<AmpCircuit, string>, { demand }: GroupDemand): SetArrangement {
  const supplies = circuit.ok ? circuit.value.stage.gridSupplies.length : 0
  return supplies > 1 && supplies === demand.count ? 'individual-trims' : demand.arrangement
}

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
