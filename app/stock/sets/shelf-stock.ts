/** The whole stock as it may be made into sets: free tubes only, and none that stands on a draft quote. */
import 'server-only'
import { dayInZone } from '@/lib/domain/calendar'
import type { Candidate } from '@/lib/domain/matching/candidate'
import type { SpreadRule } from '@/lib/domain/pairing/spread-rule'
import { USUAL_SPREAD_RULE } from '@/lib/domain/pairing/spread-rule'
import type { Shop } from '@/lib/domain/shop/shop'
import { candidateOf } from '@/lib/domain/stock/candidate-of'
import { type StockCohort, stockCohorts } from '@/lib/planning/sets/stock-cohorts'
import { findCarrying } from '@/lib/store/carrying'
import { listDraftedTubes } from '@/lib/store/draft-tube'
import { listStockForFamily } from '@/lib/store/tube'
import { listDesignationsInStock } from '@/lib/store/tube-family'
import type { SetsLimits } from './sets-limits'

type Scene = { readonly shop: Shop; readonly now: Date; readonly limits: SetsLimits }

export const spreadRuleOf = ({ yardsticks }: SetsLimits): SpreadRule => ({ ...USUAL_SPREAD_RULE, yardsticks })

export async function listCohorts({ shop, now, limits }: Scene): Promise<StockCohort[]> {
  const families = [...new Set((await listDesignationsInStock()).map(({ family }) => family))]
  const drafted = new Set((await listDraftedTubes()).map(({ tubeId }) => tubeId))
  const stock: Candidate[] = []
  for (const family of families) {
    for (const tube of await listStockForFamily(family)) {
      if (drafted.has(tube.tube.id)) continue
      stock.push(candidateOf(tube, { now, timeZone: shop.timeZone, jobInHand: null, catalogue: shop }))
    }
  }
  const { age, yardsticks } = limits
  const asOf = dayInZone(now, shop.timeZone)
  return stockCohorts(stock, {
    maximumTestAgeDays: age,
    oneDesignation: false,
    yardsticks,
    asOf,
    carrying: await findCarrying(),
  })
}
