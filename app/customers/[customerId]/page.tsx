import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { startKey } from '@/app/_components/form/after-save'
import { HistoryList } from '@/app/_components/history-list'
import { Shell } from '@/app/_components/shell/shell'
import { requireUser } from '@/lib/session'
import { findCustomer } from '@/lib/store/customer'
import { listHistoryOf } from '@/lib/store/history'
import { CustomerForm } from '../customer-form'
import { customerValues } from '../customer-schema'

export const metadata: Metadata = { title: 'Customer' }

export default async function CustomerPage({ params, searchParams }: PageProps<'/customers/[customerId]'>) {
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
          <CustomerForm key={startKey(await searchParams)} values={customerValues(customer)} />
        </div>
        <HistoryList history={history} shop={shop} />
      </div>
    </Shell>
  )
}
