/**
 * Holds or reserves the very tubes of a quote, all or none. A tube that this job
 * has reserved or fitted already by an earlier answer is not weakened to a hold.
 */
import type { Job } from '@/lib/domain/job/job'
import { type Quote, tubeIdsOf } from '@/lib/domain/quote/quote'
import { activeHold } from '@/lib/domain/stock/tube'
import type { Tx } from '@/lib/store/database'
import { listTubesFittedIn } from '@/lib/store/quote'
import { listTubesById, setHold } from '@/lib/store/tube'
import { refuse, type Step } from '@/lib/workflow/step/step'
import { refuseTaken } from './tube-standing'

export type HoldOrder = {
  readonly quote: Quote
  readonly job: Job
  readonly hold: 'held' | 'reserved'
  /** Null: no end. */
  readonly until: Date | null
}

/** Ids of the tubes that changed hands. */
export async function holdTubes(tx: Tx, step: Step, { quote, job, hold, until }: HoldOrder): Promise<string[]> {
  const here = await listTubesFittedIn(job.id, tx)
  const stocked = await listTubesById(tubeIdsOf(quote), tx)
  const positions = new Map(quote.lines.map(({ tubeId, socketPosition }) => [tubeId, socketPosition ?? '']))
  for (const { tube } of stocked)
    await refuseTaken(tx, step, { tube, socketPosition: positions.get(tube.id) || 'this quote', jobId: job.id, here })
  const wanted = stocked.flatMap(({ tube }) => {
    const settled = here.includes(tube.id) || (hold === 'held' && activeHold(tube, step.now) === 'reserved')
    return settled ? [] : [tube.id]
  })
  // The writer's turn is ours from the first statement on, so nothing can have come between.
  const taken = await setHold(tx, wanted, { hold, jobId: job.id, quoteId: quote.id, until, now: step.now })
  if (!taken) refuse({ code: 'not-found', what: 'One of the tubes' })
  return wanted
}
