/** What changed about a stocked tube since a plan or a page looked at it. */
import type { Job } from '@/lib/domain/job/job'
import type { TubeTest } from '@/lib/domain/matching/candidate'
import type { Money } from '@/lib/domain/money'
import type { Shop } from '@/lib/domain/shop/shop'
import { candidateOf } from '@/lib/domain/stock/candidate-of'
import type { PlanChange } from '@/lib/domain/stock/plan-change'
import { activeHold, type StockedTube } from '@/lib/domain/stock/tube'
import type { Step } from '@/lib/workflow/step/step'

/** A tube as it was seen. */
export type SeenTube = {
  readonly tubeId: string
  readonly mark: string
  readonly test: TubeTest
  readonly price: Money
}

/** Null: no record with a test point speaks for it. */
export type SeenThere = Omit<SeenTube, 'test'> & { readonly test: TubeTest | null }

export type ChangeScene = { readonly step: Step; readonly shop: Shop; readonly job: Pick<Job, 'id'> }

/** Whether it can still be had for the job, and is what it was seen as. */
export function tubeChanges(seen: SeenThere, stocked: StockedTube | undefined, scene: ChangeScene): PlanChange[] {
  if (!stocked) return [{ what: 'gone', mark: seen.mark, whereabouts: null }]
  const { tube } = stocked
  const { mark } = tube
  if (tube.whereabouts !== 'in-stock') return [{ what: 'gone', mark, whereabouts: tube.whereabouts }]
  if (activeHold(tube, scene.step.now) !== '' && tube.heldForJob !== scene.job.id)
    return [{ what: 'held', mark, jobNumber: tube.heldForJobNumber }]
  if (tube.condition === 'reject') return [{ what: 'rejected', mark }]
  return [
    ...testChanges(seen, stocked, scene),
    ...(seen.price === tube.price ? [] : [{ what: 'price', mark } as const]),
  ]
}

/** Whether the record that speaks for it is still the one that was seen. Null: it had none. */
export function testChanges(seen: SeenThere, stocked: StockedTube, { step, shop, job }: ChangeScene): PlanChange[] {
  const { test } = candidateOf(stocked, {
    now: step.now,
    timeZone: shop.timeZone,
    jobInHand: job.id,
    catalogue: shop,
  })
  if (sameTest(seen.test, test)) return []
  return [{ what: 'read-again', mark: stocked.tube.mark, before: seen.test, now: test }]
}

function sameTest(a: TubeTest | null, b: TubeTest | null): boolean {
  return JSON.stringify(a && testFigures(a)) === JSON.stringify(b && testFigures(b))
}

const testFigures = ({ testedAt, instrument, testPoint, plateCurrent, transconductance, shorts }: TubeTest) => [
  [testedAt, instrument, plateCurrent, transconductance, shorts],
  [testPoint.plateVoltage, testPoint.screenVoltage, testPoint.gridVoltage],
]
