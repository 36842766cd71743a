import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { HistoryList } from '@/app/_components/history-list'
import { Shell } from '@/app/_components/shell/shell'
import { requireUser } from '@/lib/session'
import { findCustomer } from '@/lib/store/customer'
import { listHistoryOf } from '@/lib/store/history'
import { CustomerForm } from '../customer-form'
import { customerValues } from '../customer-schema'

export const metadata: Metadata = { title: 'Customer' }

export default async function CustomerPage({ params }: PageProps<'/customers/[customerId]'>) {
  const { actor, shop } = await requireUser()
  const { customerId } = await params
  const customer = await findCustomer(customerId)
  if (!customer) notFound()
  const history = await listHistoryOf('customer', customerId)
  return (
    <Shell shop={shop} actor={actor}>
      <h1>{customer.name}</h1>
      <div className="columns">
        <div className="panel">
          {/* A save gives a new form its own start; the key makes the page take it. */}
          <CustomerForm key={customer.version} values={customerValues(customer)} />
        </div>
        <HistoryList history={history} shop={shop} />
      </div>
    </Shell>
  )
}
