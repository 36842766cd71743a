import type { Metadata } from 'next'
import { requireUser } from '@/lib/session'
import { SettingsFrame } from '../../settings-frame'
import { MakerForm } from '../maker-form'
import { makerValues } from '../maker-schema'

export const metadata: Metadata = { title: 'New maker' }

export default async function NewMakerPage() {
  const { actor, shop } = await requireUser()
  return (
    <SettingsFrame actor={actor} shop={shop} section="/settings/makers">
      <h1>New maker</h1>
      <div className="panel">
        <MakerForm values={makerValues(null)} />
      </div>
    </SettingsFrame>
  )
}
