import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { HistoryList } from '@/app/_components/history-list'
import { mayDo } from '@/lib/domain/person/role'
import { requireUser } from '@/lib/session'
import { listHistoryOf } from '@/lib/store/history'
import { listOperations } from '@/lib/store/operation'
import { KeeperOnly, SettingsFrame } from '../../settings-frame'
import { OperationForm } from '../operation-form'
import { operationValues } from '../operation-schema'

export const metadata: Metadata = { title: 'Operation' }

export default async function OperationPage({ params }: PageProps<'/settings/operations/[operationId]'>) {
  const { actor, shop } = await requireUser()
  const { operationId } = await params
  const operation = (await listOperations(true)).find(({ id }) => id === operationId)
  if (!operation) notFound()
  const history = await listHistoryOf('operation', operationId)
  const { currency } = shop
  return (
    <SettingsFrame actor={actor} shop={shop} section="/settings/operations">
      <h1>{operation.name}</h1>
      <div className="columns">
        <div className="panel">
          {mayDo(actor, 'keep-shop') ? (
            <OperationForm values={operationValues(operation, currency)} currency={currency} />
          ) : (
            <KeeperOnly />
          )}
        </div>
        <HistoryList history={history} shop={shop} />
      </div>
    </SettingsFrame>
  )
}
