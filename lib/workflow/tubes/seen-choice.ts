/** A set as a page showed it, held against what stands when it is chosen. */

import type { Job } from '@/lib/domain/job/job'
import { asRead } from '@/lib/domain/matching/carried-test'
import type { TestedCandidate } from '@/lib/domain/matching/proposal'
import { basisChanges, type PlanBasis } from '@/lib/domain/stock/plan-basis'
import type { PlanChange } from '@/lib/domain/stock/plan-change'
import { db, type Tx } from '@/lib/store/database'
import { listTubesById } from '@/lib/store/tube'
import { shopOf } from '@/lib/workflow/stock/add-tube-test'
import { planBasis } from './plan-basis'
import { bareTest } from './seen-tubes'
import { type ChangeScene, type SeenTube, tubeChanges } from './tube-changes'

export type SeenChoice = {
  /** As `planBasis` gave it before the set was worked out. */
  readonly basis: PlanBasis
  readonly tubes: readonly SeenTube[]
}

export const seenTube = ({ tubeId, mark, test, price }: TestedCandidate): SeenTube => ({
  ...{ tubeId, mark, price },
  test: bareTest(asRead(test)),
})

export async function choiceChanges(
  seen: SeenChoice,
  scene: ChangeScene & { readonly job: Job },
  tx: Tx = db(),
): Promise<PlanChange[]> {
  const ids = seen.tubes.map(({ tubeId }) => tubeId)
  const stocked = new Map((await listTubesById(ids, tx)).map((each) => [each.tube.id, each]))
  return [
    ...basisChanges(seen.basis, await planBasis(scene.job, await shopOf(tx), tx)),
    ...seen.tubes.flatMap((tube) => tubeChanges(tube, stocked.get(tube.tubeId), scene)),
  ]
}
