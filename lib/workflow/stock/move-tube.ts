/**
 * Takes a tube out of stock by hand, sold or scrapped, with the reason; or puts
 * it back. A tube held for a job stays where it is, and one that sits in an
 * amplifier leaves there first.
 */
import type { Result } from '@/lib/domain/result'
import { activeHold, type Tube, whereaboutsWord } from '@/lib/domain/stock/tube'
import { inTransaction, type Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { findTube, listFittingsOf, saveWhereabouts } from '@/lib/store/tube'
import { refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'

export type TubeMove = {
  readonly tubeId: string
  readonly version: number
  readonly to: 'sold' | 'scrapped' | 'in-stock'
  readonly reason: string
}

const DID = { sold: 'Sold', scrapped: 'Scrapped', 'in-stock': 'Put back into stock' } as const

export function moveTube(step: Step, { tubeId, version, to, reason }: TubeMove): Promise<Result<string, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const tube = await findTube(tubeId, tx)
      if (!tube) return refuse({ code: 'not-found', what: 'This piece' })
      if (tube.version !== version) return refuse(await stale(tx, 'tube', tubeId, version))
      await assertMovable(tx, step, tube, to)
      if (!(await saveWhereabouts(tx, tube, to, step.now))) return refuse(await stale(tx, 'tube', tubeId, version))
      const changes = [
        { label: 'Whereabouts', from: whereaboutsWord(tube.whereabouts), to: whereaboutsWord(to) },
        ...(reason === '' ? [] : [{ label: 'Reason', from: '', to: reason }]),
      ]
      const note = { at: step.now, person: step.actor.name, subject: 'tube', subjectId: tubeId } as const
      await writeHistory(tx, { ...note, did: DID[to], changes, version: version + 1 })
      return tubeId
    }),
  )
}

async function assertMovable(tx: Tx, { now }: Step, tube: Tube, to: TubeMove['to']): Promise<void> {
  const { mark, whereabouts } = tube
  if (whereabouts === to) return refuse({ code: 'tube-already', mark, whereabouts })
  if (activeHold(tube, now) !== '') return refuse({ code: 'tube-held', mark, jobNumber: tube.heldForJobNumber })
  if (whereabouts !== 'fitted') return
  const [fitting] = (await listFittingsOf(tube.id, tx)).filter(({ removedAt }) => removedAt === null)
  if (fitting)
    return refuse({
      code: 'tube-fitted',
      mark,
      place: `${fitting.position} of the ${fitting.ampName}, job ${fitting.jobNumber}`,
    })
}
