import type { Metadata } from 'next'
import { requireUser } from '@/lib/session'
import { SettingsFrame } from '../settings-frame'
import { PassPhraseForm } from './pass-phrase-form'

export const metadata: Metadata = { title: 'Your pass phrase' }

export default async function PassPhrasePage() {
  const { actor, shop } = await requireUser()
  return (
    <SettingsFrame actor={actor} shop={shop} section="/settings/pass-phrase">
      <h1>Your pass phrase</h1>
      <div className="panel" style={{ maxWidth: '32rem' }}>
        <PassPhraseForm />
      </div>
    </SettingsFrame>
  )
}
