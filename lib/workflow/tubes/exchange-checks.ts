/** What stands against an exchange: the tube sits already, something changed since the page was opened, or it does not fit. */
import { fittedBy } from '@/lib/domain/amp/fitting'
import { demandFaultText } from '@/lib/domain/bench/demand-fault-text'
import { placeDemand } from '@/lib/domain/bench/place-demand'
import { dayInZone } from '@/lib/domain/calendar'
import type { Job } from '@/lib/domain/job/job'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import type { Shop } from '@/lib/domain/shop/shop'
import { basisChanges } from '@/lib/domain/stock/plan-basis'
import type { PlanChange } from '@/lib/domain/stock/plan-change'
import { activeHold, type StockedTube } from '@/lib/domain/stock/tube'
import { unfitFor } from '@/lib/domain/stock/unfit-for'
import { wordsFor } from '@/lib/domain/words'
import type { Tx } from '@/lib/store/database'
import { listReadingSets } from '@/lib/store/reading-set'
import { listTubesById } from '@/lib/store/tube'
import { moneyIn } from '@/lib/workflow/quote/quote-notes'
import { refuse, type Step } from '@/lib/workflow/step/step'
import { shopOf } from '@/lib/workflow/stock/add-tube-test'
import { ampState, workedRound } from '@/lib/workflow/work/safety-state'
import { planBasis } from './plan-basis'
import { type SeenThere, testChanges, tubeChanges } from './tube-changes'
import type { Exchange, SeenOut, TubeExchange } from './tube-exchange'

type Scene = { readonly step: Step; readonly shop: Shop; readonly job: Job }

/** Out of a socket a tube comes at the bench, where the sheet and the socket's past change with it. */
export async function refuseSeated(tx: Tx, job: Job, { out, position }: Exchange): Promise<void> {
  if (out.tube.whereabouts !== 'fitted') return
  const { fittings } = await ampState(job, tx)
  if (fittedBy(fittings, job.id).some(({ tubeId }) => tubeId === out.tube.id))
    refuse({ code: 'exchange-fitted', mark: out.tube.mark, position })
}

export async function refuseChanged(
  tx: Tx,
  scene: Scene,
  { basis, out, into, beside }: TubeExchange,
  exchange: Exchange,
): Promise<void> {
  const there = new Map(
    (
      await listTubesById(
        beside.map(({ tubeId }) => tubeId),
        tx,
      )
    ).map((each) => [each.tube.id, each]),
  )
  const changes = [
    ...basisChanges(basis, await planBasis(scene.job, await shopOf(tx), tx)),
    ...outChanges(out, exchange.out, scene),
    ...tubeChanges(into, exchange.into, scene),
    ...beside.flatMap((seen) => stayChanges(seen, there.get(seen.tubeId), scene)),
  ]
  if (changes.length > 0) refuse({ code: 'plan-stale', changes })
}

/** That it was sold or is held elsewhere may be the very reason: what counts is that the page said so. */
function outChanges(seen: SeenOut, stocked: StockedTube, scene: Scene): PlanChange[] {
  const { tube } = stocked
  const { mark, whereabouts } = tube
  const holder = activeHold(tube, scene.step.now) === '' ? null : tube.heldForJobNumber
  if (whereabouts !== seen.whereabouts) return [{ what: 'gone', mark, whereabouts }]
  if (holder !== seen.heldFor && holder !== scene.job.number)
    return holder === null
      ? [{ what: 'let-go', mark, jobNumber: seen.heldFor ?? '' }]
      : [{ what: 'held', mark, jobNumber: holder }]
  return [
    ...testChanges(seen, stocked, scene),
    ...(seen.price === tube.price ? [] : [{ what: 'price', mark } as const]),
  ]
}

const stayChanges = (seen: SeenThere, stocked: StockedTube | undefined, scene: Scene): PlanChange[] =>
  stocked ? testChanges(seen, stocked, scene) : [{ what: 'gone', mark: seen.mark, whereabouts: null }]

/** By the rules of the choice, as far as they do not hang on a prediction: what was predicted rests on what was looked at above. */
export async function refuseUnfit(
  tx: Tx,
  { step, shop, job }: Scene,
  { limits, against = '' }: TubeExchange,
  { into, position }: Exchange,
): Promise<void> {
  const words = wordsFor(shop.words)
  const state = await ampState(job, tx)
  const [set] = await listReadingSets(job.id, tx)
  const result = set ? workedRound(state, set, shop).result : null
  const place = placeDemand(state.sheet, position, result, shop)
  const { mark } = into.tube
  if (!place.ok) {
    const { fault } = place
    return fault.code === 'socket-not-on-sheet'
      ? refuse(fault)
      : refuse({ code: 'exchange-unfit', mark, position, why: demandFaultText(fault, words) })
  }
  const reasons = unfitFor(into, place.value, {
    now: step.now,
    timeZone: shop.timeZone,
    jobInHand: job.id,
    catalogue: shop,
    format: { words, formatMoney: (amount) => moneyIn(shop, amount) },
    limits: {
      ...limits,
      priceCap: null,
      oneDesignation: false,
      yardsticks: USUAL_YARDSTICKS,
      asOf: dayInZone(step.now, shop.timeZone),
    },
  })
  const why = reasons.length > 0 ? reasons.join(' ') : against
  if (why !== '') refuse({ code: 'exchange-unfit', mark, position, why })
}
