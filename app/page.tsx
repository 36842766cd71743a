import Link from 'next/link'
import { JobTable } from '@/app/_components/job-table'
import { Shell } from '@/app/_components/shell/shell'
import { dayInZone, formatDay } from '@/lib/domain/calendar'
import { isClosed, JOB_STATES, jobStateWord } from '@/lib/domain/job/job-state'
import { capital, wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listClosedJobs, listOpenJobs } from '@/lib/store/job'
import { listStockedParts } from '@/lib/store/part-draw'
import { PartsAwaited } from './parts-awaited'

export const metadata = { title: 'The day' }

export default async function DayPage() {
  const { actor, shop } = await requireUser()
  const [open, closed, parts] = await Promise.all([listOpenJobs(), listClosedJobs(12), listStockedParts()])
  const { locale } = wordsFor(shop.words)
  const today = dayInZone(new Date(), shop.timeZone)
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>The day</h1>
        <p className="row">
          <span className="soft">{formatDay(today, locale)}</span>
          <Link href="/share-out">Share out the stock</Link>
          <Link className="button" href="/jobs/new">
            New job
          </Link>
        </p>
      </div>
      <PartsAwaited parts={parts} />
      {JOB_STATES.filter((state) => !isClosed(state)).map((state) => {
        const jobs = open.filter((job) => job.state === state)
        if (jobs.length === 0) return null
        return (
          <section key={state} className="panel" aria-labelledby={`jobs-${state}`}>
            <h2 id={`jobs-${state}`}>
              {capital(jobStateWord(state))} <span className="soft">({jobs.length})</span>
            </h2>
            <JobTable jobs={jobs} today={today} locale={locale} empty="" />
          </section>
        )
      })}
      {open.length === 0 && (
        <div className="panel">
          <p>No amplifier is in the shop. Take the first one in at the counter.</p>
        </div>
      )}
      <section className="panel" aria-labelledby="jobs-closed">
        <h2 id="jobs-closed">Lately handed over</h2>
        <JobTable jobs={closed} today={today} locale={locale} empty="None yet." withState />
      </section>
    </Shell>
  )
}
