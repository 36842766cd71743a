import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { HistoryList } from '@/app/_components/history-list'
import { requireUser } from '@/lib/session'
import { listHistoryOf } from '@/lib/store/history'
import { findMaker } from '@/lib/store/maker'
import { SettingsFrame } from '../../settings-frame'
import { MakerForm } from '../maker-form'
import { makerValues } from '../maker-schema'

export const metadata: Metadata = { title: 'Maker' }

export default async function MakerPage({ params }: PageProps<'/settings/makers/[makerId]'>) {
  const { actor, shop } = await requireUser()
  const { makerId } = await params
  const maker = await findMaker(makerId)
  if (!maker) notFound()
  const history = await listHistoryOf('maker', makerId)
  return (
    <SettingsFrame actor={actor} shop={shop} section="/settings/makers">
      <h1>{maker.name}</h1>
      <div className="columns">
        <div className="panel">
          <MakerForm values={makerValues(maker)} />
        </div>
        <HistoryList history={history} shop={shop} />
      </div>
    </SettingsFrame>
  )
}
