/** On to testing, with what is still open said before. */
import Link from 'next/link'
import type { Job } from '@/lib/domain/job/job'
import { jobStateWord, nextStates } from '@/lib/domain/job/job-state'
import { type Actor, dutyNeeds, mayDo } from '@/lib/domain/person/role'
import type { Quote } from '@/lib/domain/quote/quote'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import { PressForm } from '../press-form'
import { pressFinish } from './actions'
import type { TubeOrder } from './tube-orders'

type Props = {
  readonly job: Job
  readonly quote: Quote | null
  readonly orders: readonly TubeOrder[]
  readonly actor: Actor
  readonly shop: Shop
}

export function FinishWork({ job, quote, orders, actor, shop }: Props) {
  const words = wordsFor(shop.words)
  const isWork = ({ kind }: Quote['lines'][number]) => kind === 'labour' || kind === 'part'
  const lines = quote?.lines.filter((line) => isWork(line) && line.doneAt === null).length ?? 0
  const tubes = orders.filter(({ fitted }) => fitted === null).length
  const open = [counted(lines, 'line', 'lines'), counted(tubes, words.tube, words.tubes)].filter(Boolean).join(' and ')
  const canTest = job.state !== 'testing' && job.state !== 'ready' && nextStates(job.state).includes('testing')
  return (
    <section className="panel" aria-labelledby="finish">
      <h2 id="finish">When the work is done</h2>
      {open !== '' && <p>{open} not ticked yet.</p>}
      {!mayDo(actor, 'bench-work') && <p className="soft">{dutyNeeds('bench-work')}</p>}
      {canTest && mayDo(actor, 'bench-work') ? (
        <PressForm action={pressFinish.bind(null, job.number)}>Work done: go to testing</PressForm>
      ) : (
        <p className="soft">
          The job is “{jobStateWord(job.state)}”.{' '}
          <Link href={`/jobs/${job.number}/safety`}>Readings after the work and safety</Link>
        </p>
      )}
    </section>
  )
}

const counted = (count: number, one: string, many: string) =>
  count === 0 ? '' : `${count} ${count === 1 ? one : many}`
