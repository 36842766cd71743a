import type { Metadata } from 'next'
import { onceMark } from '@/app/_components/form/once'
import { Shell } from '@/app/_components/shell/shell'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { findCustomer, listCustomers } from '@/lib/store/customer'
import { AmpForm } from '../amp-form'
import { newAmpValues } from '../amp-schema'
import { ChooseOwner } from './choose-owner'

export const metadata: Metadata = { title: 'New amplifier' }

export default async function NewAmpPage({ searchParams }: PageProps<'/amps/new'>) {
  const { actor, shop } = await requireUser()
  const { customer, q } = await searchParams
  const owner = typeof customer === 'string' ? await findCustomer(customer) : null
  const search = typeof q === 'string' ? q : ''
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>New amplifier</h1>
        {owner && <p className="soft">for {owner.name}</p>}
      </div>
      {owner ? (
        <div className="panel">
          <AmpForm
            values={{ ...newAmpValues(owner.id, shop.mainsVolts), once: onceMark() }}
            words={wordsFor(shop.words)}
          />
        </div>
      ) : (
        <ChooseOwner customers={await listCustomers(search, 30)} search={search} />
      )}
    </Shell>
  )
}
