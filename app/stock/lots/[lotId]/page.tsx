import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { startKey } from '@/app/_components/form/after-save'
import { onceMark } from '@/app/_components/form/once'
import { HistoryList } from '@/app/_components/history-list'
import { Shell } from '@/app/_components/shell/shell'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listHistoryOf } from '@/lib/store/history'
import { findLot } from '@/lib/store/tube-lot'
import { pricesOf } from '../../look-up-prices'
import { stockKit } from '../../tube-schema'
import { TypeLists } from '../../type-lists'
import { LotForm, TakeOutForm } from '../lot-form'
import { lotValues } from '../lot-schema'

export const metadata: Metadata = { title: 'Lot' }

export default async function LotPage({ params, searchParams }: PageProps<'/stock/lots/[lotId]'>) {
  const { actor, shop } = await requireUser()
  const lot = await findLot((await params).lotId)
  if (!lot) notFound()
  const { designation, condition } = lot
  const [history, prices] = await Promise.all([
    listHistoryOf('lot', lot.id),
    pricesOf({ designation, condition, test: null, tubeId: null }, shop),
  ])
  const kit = stockKit(shop)
  const formKey = startKey(await searchParams)
  const { tube, tubes } = wordsFor(shop.words)
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>
          {lot.designation}{' '}
          <span className="soft">
            {lot.count} {lot.count === 1 ? tube : tubes}
          </span>
        </h1>
        <Link href="/stock/lots">All lots</Link>
      </div>
      <TypeLists testers={[]} catalogue={shop} />
      <div className="columns">
        <section className="panel">
          <h2>What is written</h2>
          <LotForm key={formKey} kit={kit} values={lotValues(lot, kit)} prices={prices} />
        </section>
        <div className="stack">
          <section className="panel">
            <h2>One of them</h2>
            {lot.count > 0 ? <TakeOutForm lotId={lot.id} once={onceMark()} /> : <p className="soft">None is left.</p>}
          </section>
          <HistoryList history={history} shop={shop} />
        </div>
      </div>
    </Shell>
  )
}
