/** Jobs as a ruled list. The promise that has passed is said in words. */
import Link from 'next/link'
import { type Day, daysBetween, formatDay } from '@/lib/domain/calendar'
import type { JobLine } from '@/lib/domain/job/job'
import { isClosed } from '@/lib/domain/job/job-state'
import styles from './job-table.module.css'
import { StateTag } from './state-tag'

type Props = {
  readonly jobs: readonly JobLine[]
  readonly today: Day
  readonly locale: string
  readonly empty: string
  /** Left out where every job of the list stands in the same state. */
  readonly withState?: boolean
}

export function JobTable({ jobs, today, locale, empty, withState = false }: Props) {
  if (jobs.length === 0) return <p className="soft">{empty}</p>
  return (
    <div className="table-scroll">
      <table className={styles.jobs}>
        <thead>
          <tr>
            <th className={styles.number}>Job</th>
            <th className={styles.amp}>Amplifier</th>
            <th className={styles.customer}>Customer</th>
            <th>Fault, in the customer's words</th>
            {withState && <th className={styles.state}>State</th>}
            <th className={styles.promised}>Promised</th>
          </tr>
        </thead>
        <tbody>
          {jobs.map((job) => (
            <tr key={job.id}>
              <td className="nowrap">
                <Link href={`/jobs/${job.number}`}>{job.number}</Link>
              </td>
              <td>{job.ampName}</td>
              <td>{job.customerName}</td>
              <td>{job.fault}</td>
              {withState && (
                <td>
                  <StateTag state={job.state} />
                </td>
              )}
              <td>
                <PromisedDay day={job.promisedOn} today={isClosed(job.state) ? null : today} locale={locale} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

/** Without `today` the job is closed, and a day that has passed says nothing. */
function PromisedDay({ day, today, locale }: { day: Day | null; today: Day | null; locale: string }) {
  if (day === null) return <span className="soft">none</span>
  if (today === null) return formatDay(day, locale)
  const left = daysBetween(today, day)
  const words = left < 0 ? `${-left} d late` : left === 0 ? 'today' : `in ${left} d`
  return (
    <>
      {formatDay(day, locale)}{' '}
      <span
        className={left <= 1 ? 'tag' : 'soft'}
        data-tone={left < 0 ? 'warn' : undefined}
        data-shape={left < 0 ? '!' : '·'}
      >
        {words}
      </span>
    </>
  )
}
