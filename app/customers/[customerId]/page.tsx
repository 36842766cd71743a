import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { startKey } from '@/app/_components/form/after-save'
import { HistoryList } from '@/app/_components/history-list'
import { JobTable } from '@/app/_components/job-table'
import { Shell } from '@/app/_components/shell/shell'
import { dayInZone } from '@/lib/domain/calendar'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listAmpsOfCustomer } from '@/lib/store/amp'
import { findCustomer } from '@/lib/store/customer'
import { listHistoryOf } from '@/lib/store/history'
import { listJobsOf } from '@/lib/store/job'
import { CustomerForm } from '../customer-form'
import { customerValues } from '../customer-schema'
import { CustomerAmps } from './customer-amps'

export const metadata: Metadata = { title: 'Customer' }

export default async function CustomerPage({ params, searchParams }: PageProps<'/customers/[customerId]'>) {
  const { actor, shop } = await requireUser()
  const { customerId } = await params
  const customer = await findCustomer(customerId)
  if (!customer) notFound()
  const [amps, jobs, history] = await Promise.all([
    listAmpsOfCustomer(customerId),
    listJobsOf({ customerId }),
    listHistoryOf('customer', customerId),
  ])
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>{customer.name}</h1>
        <Link className="button" href={`/jobs/new?customer=${customer.id}&amp=new`}>
          Take in an amplifier
        </Link>
      </div>
      <div className="columns">
        <div className="stack">
          <CustomerAmps amps={amps} customerId={customer.id} />
          <section className="panel" aria-labelledby="jobs">
            <h2 id="jobs">Jobs</h2>
            <JobTable
              jobs={jobs}
              today={dayInZone(new Date(), shop.timeZone)}
              locale={wordsFor(shop.words).locale}
              empty="None yet."
              withState
            />
          </section>
          <section className="panel" aria-labelledby="customer">
            <h2 id="customer">The customer</h2>
            <CustomerForm key={startKey(await searchParams)} values={customerValues(customer)} />
          </section>
        </div>
        <HistoryList history={history} shop={shop} />
      </div>
    </Shell>
  )
}
