import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { startKey } from '@/app/_components/form/after-save'
import { onceMark } from '@/app/_components/form/once'
import { HistoryList } from '@/app/_components/history-list'
import { Shell } from '@/app/_components/shell/shell'
import { isToReorder } from '@/lib/domain/stock/part'
import { requireUser } from '@/lib/session'
import { listHistoryOf } from '@/lib/store/history'
import { findStockedPart, listDrawsOf } from '@/lib/store/part-draw'
import { stockKit } from '../../tube-schema'
import { CountForm, PartForm } from '../part-form'
import { PartJobs } from '../part-jobs'
import { partValues } from '../part-schema'

export const metadata: Metadata = { title: 'Part' }

export default async function PartPage({ params, searchParams }: PageProps<'/stock/parts/[partId]'>) {
  const { actor, shop } = await requireUser()
  const part = await findStockedPart((await params).partId)
  if (!part) notFound()
  const [history, drawn] = await Promise.all([listHistoryOf('part', part.id), listDrawsOf(part.id)])
  const kit = stockKit(shop)
  const formKey = startKey(await searchParams)
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>
          {part.name} <span className="soft">{part.value}</span>
        </h1>
        <Link href="/stock/parts">All parts</Link>
      </div>
      <p>
        {part.count} in the drawer, {part.drawer.aside} set aside for jobs, {part.drawer.free} free
        {part.drawer.short > 0 && `; ${part.drawer.short} short for jobs`}
        {isToReorder(part) && `: to be ordered, the level is ${part.reorderLevel}`}.
      </p>
      <div className="columns">
        <section className="panel">
          <h2>What is written</h2>
          <PartForm key={`part ${formKey}`} kit={kit} values={partValues(part, kit)} />
        </section>
        <div className="stack">
          <section className="panel">
            <h2>Count</h2>
            <CountForm key={`count ${formKey}`} partId={part.id} once={onceMark()} />
          </section>
          <PartJobs drawer={part.drawer} drawn={drawn} shop={shop} />
          <HistoryList history={history} shop={shop} />
        </div>
      </div>
    </Shell>
  )
}
