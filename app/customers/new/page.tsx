import type { Metadata } from 'next'
import { onceMark } from '@/app/_components/form/once'
import { Shell } from '@/app/_components/shell/shell'
import { requireUser } from '@/lib/session'
import { CustomerForm } from '../customer-form'
import { customerValues } from '../customer-schema'

export const metadata: Metadata = { title: 'New customer' }

export default async function NewCustomerPage() {
  const { actor, shop } = await requireUser()
  return (
    <Shell shop={shop} actor={actor}>
      <h1>New customer</h1>
      <div className="panel">
        <CustomerForm values={{ ...customerValues(null), once: onceMark() }} />
      </div>
    </Shell>
  )
}
