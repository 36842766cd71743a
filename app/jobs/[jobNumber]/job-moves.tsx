/** Moving a job by hand. Release and pickup have gates of their own and are not offered here. */

import { StateTag } from '@/app/_components/state-tag'
import { formatInstant } from '@/lib/domain/calendar'
import type { Job } from '@/lib/domain/job/job'
import { jobStateWord, plainMoves } from '@/lib/domain/job/job-state'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import { submitMove } from './actions'
import { MoveForm } from './move-form'

export function JobMoves({ job, shop, formKey }: { job: Job; shop: Shop; formKey: string }) {
  const moves = plainMoves(job.state).map((state) => ({ value: state, text: jobStateWord(state) }))
  return (
    <section className="panel" aria-labelledby="stands">
      <h2 id="stands">Where it stands</h2>
      <p className="row">
        <StateTag state={job.state} />
        <span className="soft">since {formatInstant(job.stateSince, shop.timeZone, wordsFor(shop.words).locale)}</span>
      </p>
      {moves.length > 0 && (
        <MoveForm key={formKey} action={submitMove.bind(null, job.number)} version={job.version} moves={moves} />
      )}
    </section>
  )
}
