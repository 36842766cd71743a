import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { startKey } from '@/app/_components/form/after-save'
import { HistoryList } from '@/app/_components/history-list'
import { Shell } from '@/app/_components/shell/shell'
import { ownTubeTypeOf } from '@/lib/domain/tube/own/own-tube-type'
import { knownTypes } from '@/lib/domain/tube/tube-catalogue'
import { requireUser } from '@/lib/session'
import { listHistoryOf } from '@/lib/store/history'
import { findOwnType } from '@/lib/store/own-type'
import { mayKeepTypes } from '@/lib/workflow/shop/keep-own-type'
import { CardHead } from './card-head'
import { OwnActions } from './own-actions'
import { OwnCautions } from './own-cautions'
import { TypeCard } from './type-card'

export const metadata: Metadata = { title: 'Tube data' }

export default async function TypePage({ params, searchParams }: PageProps<'/types/[typeId]'>) {
  const { actor, shop } = await requireUser()
  const { typeId } = await params
  const query = await searchParams
  const own = await findOwnType(typeId)
  // A withdrawn one is looked up no more, but its card can still be read.
  const catalogue = own && !own.active ? { ownTypes: [ownTubeTypeOf(own.id, own.entry)] } : shop
  const type = knownTypes(catalogue).find(({ id }) => id === typeId)
  if (!type) notFound()
  const asked = typeof query.as === 'string' ? query.as.slice(0, 40) : ''
  const mayKeep = mayKeepTypes({ actor })
  return (
    <Shell shop={shop} actor={actor}>
      <CardHead type={type} own={own} asked={asked} catalogue={catalogue} mayKeep={mayKeep} />
      {own && <OwnCautions type={own} shop={shop} />}
      <TypeCard type={type} catalogue={catalogue} shop={shop} />
      {own && mayKeep && <OwnActions type={own} formKey={startKey(query)} />}
      {own && <HistoryList history={await listHistoryOf('type', typeId)} shop={shop} />}
    </Shell>
  )
}
