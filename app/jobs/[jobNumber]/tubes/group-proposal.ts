import 'server-only'
import { type DemandFault, type GroupDemand, groupDemand } from '@/lib/domain/bench/group-demand'
import { dayInZone } from '@/lib/domain/calendar'
import type { Job } from '@/lib/domain/job/job'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import type { Proposal, SetOption } from '@/lib/domain/matching/proposal'
import { proposeSet } from '@/lib/domain/matching/propose-set'
import { ok, type Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { candidateOf } from '@/lib/domain/stock/candidate-of'
import { listStockForFamily } from '@/lib/store/tube'
import type { LatestBench } from '../latest-bench'
import type { Limits } from './limits-form'

export type GroupProposal = { readonly wanted: GroupDemand; readonly proposal: Proposal }

type Asked = {
  readonly group: string
  readonly bench: LatestBench
  readonly job: Job
  readonly shop: Shop
  readonly limits: Limits
}

/** Worked out anew whenever it is asked for, so a set that somebody took meanwhile is never offered. */
export async function proposeForGroup({
  group,
  bench,
  job,
  shop,
  limits,
}: Asked): Promise<Result<GroupProposal, DemandFault>> {
  const wanted = groupDemand(bench.sheet, group, bench.result, shop)
  if (!wanted.ok) return wanted
  const now = new Date()
  const stock = await listStockForFamily(wanted.value.demand.family)
  const candidates = stock.map((tube) =>
    candidateOf(tube, { now, timeZone: shop.timeZone, jobInHand: job.id, catalogue: shop }),
  )
  const proposal = proposeSet(candidates, wanted.value.demand, {
    maximumTestAgeDays: limits.age,
    allowOverPrintedRating: limits.over,
    priceCap: limits.cap,
    oneDesignation: limits.one,
    yardsticks: USUAL_YARDSTICKS,
    asOf: dayInZone(now, shop.timeZone),
  })
  return ok({ wanted: wanted.value, proposal })
}

/** The sets shown, best first, none twice. */
export function shownSets({ closest, leastPrice, next }: Proposal): SetOption[] {
  const cheaper = leastPrice && leastPrice.key !== closest?.key ? [leastPrice] : []
  return [...(closest ? [closest] : []), ...cheaper, ...next]
}
