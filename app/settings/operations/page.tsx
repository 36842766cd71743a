import type { Metadata } from 'next'
import Link from 'next/link'
import { formatMoney, lineAmount } from '@/lib/domain/money'
import { mayDo } from '@/lib/domain/person/role'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listOperations, type Operation } from '@/lib/store/operation'
import { SettingsList } from '../settings-list'
import { submitMove } from './actions'

export const metadata: Metadata = { title: 'Operations' }

export default async function OperationsPage() {
  const { actor, shop } = await requireUser()
  const keeper = mayDo(actor, 'keep-shop')
  const all = await listOperations(true)
  const inUse = all.filter(({ active }) => active)
  const ordered = [...inUse, ...all.filter(({ active }) => !active)]
  const list = { actor, shop, section: '/settings/operations' } as const
  return (
    <SettingsList {...list} title="Operations" newText="New operation">
      <thead>
        <tr>
          <th>Operation</th>
          <th className="num">Hours</th>
          <th className="num">Price before tax</th>
          <th>In use</th>
          {keeper && <th>Order</th>}
        </tr>
      </thead>
      <tbody>
        {ordered.map((operation, place) => (
          <tr key={operation.id}>
            <td>
              {keeper ? <Link href={`/settings/operations/${operation.id}`}>{operation.name}</Link> : operation.name}
            </td>
            <td className="num">{operation.milliHours === null ? '—' : operation.milliHours / 1000}</td>
            <td className="num">{priceText(operation, shop)}</td>
            <td>{operation.active ? 'yes' : 'no, retired'}</td>
            {keeper && (
              <td>
                {operation.active && (
                  <MoveButtons {...operation} first={place === 0} last={place === inUse.length - 1} />
                )}
              </td>
            )}
          </tr>
        ))}
      </tbody>
    </SettingsList>
  )
}

function priceText({ milliHours, flatPrice }: Operation, shop: Shop): string {
  const amount = flatPrice ?? lineAmount(shop.hourlyRate, milliHours ?? 0)
  return formatMoney(amount, shop.currency, wordsFor(shop.words).locale)
}

function MoveButtons({ id, name, first, last }: { id: string; name: string; first: boolean; last: boolean }) {
  return (
    <form action={submitMove} className="row" style={{ flexWrap: 'nowrap', gap: '0.25rem' }}>
      <input type="hidden" name="id" value={id} />
      <button
        type="submit"
        name="move"
        value="up"
        className="button quiet"
        disabled={first}
        aria-label={`Move ${name} up`}
      >
        Up
      </button>
      <button
        type="submit"
        name="move"
        value="down"
        className="button quiet"
        disabled={last}
        aria-label={`Move ${name} down`}
      >
        Down
      </button>
    </form>
  )
}
