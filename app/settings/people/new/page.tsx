import type { Metadata } from 'next'
import { mayDo } from '@/lib/domain/person/role'
import { requireUser } from '@/lib/session'
import { KeeperOnly, SettingsFrame } from '../../settings-frame'
import { NewPersonForm } from '../person-forms'

export const metadata: Metadata = { title: 'Add somebody' }

export default async function NewPersonPage() {
  const { actor, shop } = await requireUser()
  return (
    <SettingsFrame actor={actor} shop={shop} section="/settings/people">
      <h1>Add somebody</h1>
      <div className="panel">{mayDo(actor, 'keep-shop') ? <NewPersonForm /> : <KeeperOnly />}</div>
    </SettingsFrame>
  )
}
