import type { Metadata } from 'next'
import { mayDo } from '@/lib/domain/person/role'
import { requireUser } from '@/lib/session'
import { KeeperOnly, SettingsFrame } from '../../settings-frame'
import { OperationForm } from '../operation-form'
import { operationValues } from '../operation-schema'

export const metadata: Metadata = { title: 'New operation' }

export default async function NewOperationPage() {
  const { actor, shop } = await requireUser()
  const { currency } = shop
  return (
    <SettingsFrame actor={actor} shop={shop} section="/settings/operations">
      <h1>New operation</h1>
      <div className="panel">
        {mayDo(actor, 'keep-shop') ? (
          <OperationForm values={operationValues(null, currency)} currency={currency} />
        ) : (
          <KeeperOnly />
        )}
      </div>
    </SettingsFrame>
  )
}
