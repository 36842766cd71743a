import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { HistoryList } from '@/app/_components/history-list'
import { requireUser } from '@/lib/session'
import { listHistoryOf } from '@/lib/store/history'
import { findLabelSheet } from '@/lib/store/label-sheet'
import { SettingsFrame } from '../../settings-frame'
import { LabelSheetForm } from '../label-sheet-form'
import { labelSheetValues } from '../label-sheet-schema'

export const metadata: Metadata = { title: 'Label sheet' }

export default async function LabelSheetPage({ params }: PageProps<'/settings/labels/[sheetId]'>) {
  const { actor, shop } = await requireUser()
  const sheet = await findLabelSheet((await params).sheetId)
  if (!sheet || sheet.version === 0) notFound()
  const history = await listHistoryOf('labels', sheet.id)
  return (
    <SettingsFrame actor={actor} shop={shop} section="/settings/labels">
      <h1>{sheet.name}</h1>
      <LabelSheetForm values={labelSheetValues(sheet)} />
      <HistoryList history={history} shop={shop} />
    </SettingsFrame>
  )
}
