/** Tubes that belong together from now on, under a name for each set: all of the sets, or none. */
import { changesBetween, shown } from '@/lib/domain/history/changes'
import type { Result } from '@/lib/domain/result'
import type { PlanChange } from '@/lib/domain/stock/plan-change'
import { activeHold, type Tube, type TubeDetails } from '@/lib/domain/stock/tube'
import { inTransaction, type Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { listTubesById, saveTube } from '@/lib/store/tube'
import { refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'

export type SetToKeep = {
  readonly name: string
  readonly tubes: readonly { readonly tubeId: string; readonly mark: string }[]
}

/** Gives how many sets there are of it. */
export function keepSets(step: Step, sets: readonly SetToKeep[]): Promise<Result<number, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const tubes = await standing(tx, step, sets)
      for (const { name, tubes: members } of sets)
        for (const { tubeId } of members) await putInSet(tx, step, tubes.get(tubeId) as Tube, name)
      return sets.length
    }),
  )
}

/** Every tube by its id, or what has become of those that are not to be had any more. */
async function standing(tx: Tx, { now }: Step, sets: readonly SetToKeep[]): Promise<ReadonlyMap<string, Tube>> {
  const wanted = sets.flatMap(({ tubes }) => tubes)
  const stocked = await listTubesById(
    wanted.map(({ tubeId }) => tubeId),
    tx,
  )
  const byId = new Map(stocked.map(({ tube }) => [tube.id, tube]))
  const changes = wanted.flatMap(({ tubeId, mark }): PlanChange[] => {
    const tube = byId.get(tubeId)
    if (!tube) return [{ what: 'gone', mark, whereabouts: null }]
    if (tube.whereabouts !== 'in-stock') return [{ what: 'gone', mark, whereabouts: tube.whereabouts }]
    return activeHold(tube, now) === '' ? [] : [{ what: 'held', mark, jobNumber: tube.heldForJobNumber }]
  })
  if (changes.length > 0) refuse({ code: 'plan-stale', changes })
  return byId
}

async function putInSet(tx: Tx, { actor, now }: Step, tube: Tube, name: string): Promise<void> {
  const { id, version, family, further } = tube
  const kept = await saveTube(tx, { id, version, further: { ...further, setName: name } }, detailsOf(tube), family)
  if (!kept) refuse(await stale(tx, 'tube', id, version))
  const changes = changesBetween(shown([['Kept with set', further.setName]]), shown([['Kept with set', name]]))
  const about = { subject: 'tube', subjectId: id, version: version + 1 } as const
  await writeHistory(tx, { at: now, person: actor.name, ...about, did: `Kept in the set “${name}”`, changes })
}

function detailsOf({ mark, designation, condition, acquired, construction, location, cost, price }: Tube): TubeDetails {
  return { mark, designation, condition, acquired, construction, location, cost, price }
}
