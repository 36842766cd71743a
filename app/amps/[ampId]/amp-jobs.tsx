import Link from 'next/link'
import type { Amp } from '@/lib/domain/amp/amp'
import { formatInstant } from '@/lib/domain/calendar'
import type { JobLine } from '@/lib/domain/job/job'
import { jobStateWord } from '@/lib/domain/job/job-state'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'

export function AmpJobs({ amp, jobs, shop }: { amp: Amp; jobs: readonly JobLine[]; shop: Shop }) {
  const { locale } = wordsFor(shop.words)
  return (
    <section className="panel" aria-labelledby="jobs">
      <div className="panel-head">
        <h2 id="jobs">Jobs</h2>
        <Link href={`/jobs/new?customer=${amp.customerId}&amp=${amp.id}`}>Take it in</Link>
      </div>
      {jobs.length === 0 && <p className="soft">Not in for work yet.</p>}
      {jobs.length > 0 && (
        <div className="table-scroll">
          <table>
            <thead>
              <tr>
                <th>Job</th>
                <th>State</th>
                <th>Taken in</th>
                <th>Fault</th>
              </tr>
            </thead>
            <tbody>
              {jobs.map(({ id, number, state, receivedAt, fault }) => (
                <tr key={id}>
                  <td className="nowrap">
                    <Link href={`/jobs/${number}`}>{number}</Link>
                  </td>
                  <td className="nowrap">{jobStateWord(state)}</td>
                  <td className="nowrap">{formatInstant(receivedAt, shop.timeZone, locale)}</td>
                  <td>{fault}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  )
}
