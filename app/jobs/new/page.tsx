import type { Metadata } from 'next'
import Link from 'next/link'
import { onceMark } from '@/app/_components/form/once'
import { Shell } from '@/app/_components/shell/shell'
import { ampTitle } from '@/lib/domain/amp/amp'
import type { Shop } from '@/lib/domain/shop/shop'
import { requireUser } from '@/lib/session'
import { findAmp, listAmps, listAmpsOfCustomer } from '@/lib/store/amp'
import { findCustomer, listCustomers } from '@/lib/store/customer'
import { IntakeForm } from './intake-form'
import { intakeValues } from './intake-schema'
import { WhoBringsIt } from './who-brings-it'

export const metadata: Metadata = { title: 'New job' }

const one = (value: string | string[] | undefined): string => (typeof value === 'string' ? value : '')

export default async function NewJobPage({ searchParams }: PageProps<'/jobs/new'>) {
  const { actor, shop } = await requireUser()
  const query = await searchParams
  const [customer, amp] = [one(query.customer), one(query.amp)]
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>New job</h1>
        {customer !== '' && <Link href="/jobs/new">Start again with somebody else</Link>}
      </div>
      {customer === '' ? (
        <Search who={one(query.who)} />
      ) : (
        <Intake shop={shop} customerId={customer} ampId={amp} typed={one(query.who)} />
      )}
    </Shell>
  )
}

async function Search({ who }: { who: string }) {
  const found = who.trim() === '' ? [] : await listCustomers(who, 8)
  const customers = await Promise.all(
    found.map(async (customer) => ({ customer, amps: await listAmpsOfCustomer(customer.id) })),
  )
  const shown = new Set(found.map(({ id }) => id))
  const amps = who.trim() === '' ? [] : (await listAmps(who, 8)).filter(({ customerId }) => !shown.has(customerId))
  return <WhoBringsIt who={who} customers={customers} amps={amps} />
}

async function Intake({
  shop,
  customerId,
  ampId,
  typed,
}: {
  shop: Shop
  customerId: string
  ampId: string
  typed: string
}) {
  const [customer, amp] = [await findCustomer(customerId), await findAmp(ampId)]
  const start = { customerId: customer?.id ?? '', ampId: amp?.id ?? '', typed, mainsVolts: shop.mainsVolts }
  return (
    <IntakeForm
      values={{ ...intakeValues(start), once: onceMark() }}
      currency={shop.currency}
      wordSet={shop.words}
      customerText={customer && [customer.name, customer.phone, customer.email].filter(Boolean).join(' · ')}
      ampText={amp && `${ampTitle(amp)}, ${amp.mainsVolts} V`}
    />
  )
}
