import type { Metadata } from 'next'
import { onceMark } from '@/app/_components/form/once'
import { requireUser } from '@/lib/session'
import { SettingsFrame } from '../../settings-frame'
import { LabelSheetForm } from '../label-sheet-form'
import { labelSheetValues } from '../label-sheet-schema'

export const metadata: Metadata = { title: 'New label sheet' }

export default async function NewLabelSheetPage() {
  const { actor, shop } = await requireUser()
  return (
    <SettingsFrame actor={actor} shop={shop} section="/settings/labels">
      <h1>New label sheet</h1>
      <LabelSheetForm values={{ ...labelSheetValues(null), once: onceMark() }} />
    </SettingsFrame>
  )
}
