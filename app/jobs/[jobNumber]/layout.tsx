import Link from 'next/link'
import { Shell } from '@/app/_components/shell/shell'
import { StateTag } from '@/app/_components/state-tag'
import { formatDay } from '@/lib/domain/calendar'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { findJobProgress } from '@/lib/store/job-progress'
import { requireHead } from './require-head'
import { stepTabs } from './step-tabs'
import { Steps } from './steps'

export default async function JobLayout({ params, children }: LayoutProps<'/jobs/[jobNumber]'>) {
  const { actor, shop } = await requireUser()
  const { job, customer, amp } = await requireHead(params)
  const words = wordsFor(shop.words)
  const progress = await findJobProgress(job.id, job.ampId)
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>
          Job <span className="nowrap">{job.number}</span> · {amp.make} {amp.model}
        </h1>
        <p className="row">
          <StateTag state={job.state} />
          <Link href={`/customers/${customer.id}`}>{customer.name}</Link>
          <span className="soft">
            {job.promisedOn ? `promised ${formatDay(job.promisedOn, words.locale)}` : 'no promised day'}
          </span>
        </p>
      </div>
      <Steps base={`/jobs/${job.number}`} tabs={stepTabs(job, progress, words)} />
      {children}
    </Shell>
  )
}
