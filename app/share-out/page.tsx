import type { Metadata } from 'next'
import Link from 'next/link'
import { Shell } from '@/app/_components/shell/shell'
import { jobStateWord } from '@/lib/domain/job/job-state'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { type JobToTick, ShareForm } from './share-form'
import { tickName } from './share-schema'
import { listWaitingJobs, tickedUnasked, type WaitingJob } from './waiting-jobs'

export const metadata: Metadata = { title: 'Share out' }

export default async function ShareOutPage() {
  const { actor, shop } = await requireUser()
  const words = wordsFor(shop.words)
  const jobs = await listWaitingJobs(shop)
  const able = jobs.filter(({ against }) => against === null)
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>Share out</h1>
        <Link href="/stock/sets">Sets in stock</Link>
      </div>
      <p>
        One stock, all open jobs: as many jobs as possible get their sets, then the sets are as close as they can be,
        and dear {words.tubes} are kept where a cheaper one does as well. Nothing is written down until a set is
        accepted.
      </p>
      {able.length === 0 && (
        <p className="form-message">
          No open job waits for a set: every amplifier with output sockets has one, or its sheet names no output socket.
        </p>
      )}
      {able.length > 0 && (
        <ShareForm jobs={able.map(jobToTick)} values={valuesFor(able, shop)} currency={shop.currency} words={words} />
      )}
      <Unable jobs={jobs.filter(({ against }) => against !== null)} />
    </Shell>
  )
}

const wantsText = ({ groups }: WaitingJob): string =>
  groups.map(({ group, designation, demand }) => `${demand.count} × ${designation} for “${group}”`).join(', ')

const jobToTick = (job: WaitingJob): JobToTick => ({
  number: job.line.number,
  what: `${job.line.ampName}, ${job.line.customerName}`,
  wants: `${wantsText(job)}; ${jobStateWord(job.line.state)}`,
  note: job.onDraft ? 'A set stands on its draft quote already; ticked, it is shared out anew.' : null,
})

const valuesFor = (jobs: readonly WaitingJob[], shop: Shop) => ({
  age: String(shop.testAgeDays),
  milliamps: String(1000 * USUAL_YARDSTICKS.plateCurrent),
  percent: String(100 * USUAL_YARDSTICKS.transconductance),
  cap: '',
  ...Object.fromEntries(jobs.filter(tickedUnasked).map(({ line }) => [tickName(line.number), 'on'])),
})

function Unable({ jobs }: { readonly jobs: readonly WaitingJob[] }) {
  if (jobs.length === 0) return null
  return (
    <section className="panel">
      <h2>Cannot take part</h2>
      <ul>
        {jobs.map(({ line, against }) => (
          <li key={line.number}>
            <Link href={`/jobs/${line.number}`}>{line.number}</Link> {line.ampName}, {line.customerName}: {against}
          </li>
        ))}
      </ul>
    </section>
  )
}
