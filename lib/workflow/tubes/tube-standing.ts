/** Whether a tube can still go into this job's amplifier, or who has it. */
import { activeHold, type Tube } from '@/lib/domain/stock/tube'
import type { Tx } from '@/lib/store/database'
import { listFittingsOf } from '@/lib/store/tube'
import { refuse, type Step } from '@/lib/workflow/step/step'

export type WantedTube = {
  readonly tube: Tube
  readonly socketPosition: string
  readonly jobId: string
  /** Ids of tubes that this very job has fitted already. */
  readonly here: readonly string[]
}

/** Names the tube, its socket and the job that has it. */
export async function refuseTaken(
  tx: Tx,
  { now }: Step,
  { tube, socketPosition, jobId, here }: WantedTube,
): Promise<void> {
  const named = { code: 'tube-not-free', mark: tube.mark, position: socketPosition } as const
  if (here.includes(tube.id)) return
  if (tube.whereabouts === 'fitted') {
    const sits = (await listFittingsOf(tube.id, tx)).find(({ removedAt }) => removedAt === null)
    refuse({ ...named, why: 'fitted', jobNumber: sits?.jobNumber ?? null })
  }
  if (tube.whereabouts !== 'in-stock') refuse({ ...named, why: tube.whereabouts, jobNumber: null })
  const hold = activeHold(tube, now)
  if (hold !== '' && tube.heldForJob !== jobId) refuse({ ...named, why: hold, jobNumber: tube.heldForJobNumber })
}
