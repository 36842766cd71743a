import type { Metadata } from 'next'
import Link from 'next/link'
import { mayDo } from '@/lib/domain/person/role'
import { requireUser } from '@/lib/session'
import { listPeople } from '@/lib/store/person'
import { SettingsList } from '../settings-list'

export const metadata: Metadata = { title: 'People' }

export default async function PeoplePage() {
  const { actor, shop } = await requireUser()
  const keeper = mayDo(actor, 'keep-shop')
  const people = await listPeople()
  const list = { actor, shop, section: '/settings/people' } as const
  return (
    <SettingsList {...list} title="People" newText="Add somebody">
      <thead>
        <tr>
          <th>Name</th>
          <th>Sign-in name</th>
          <th>Work</th>
          <th>Keeps the shop</th>
          <th>May sign in</th>
        </tr>
      </thead>
      <tbody>
        {people.map(({ id, name, signInName, role, keepsShop, active }) => (
          <tr key={id}>
            <td>{keeper ? <Link href={`/settings/people/${id}`}>{name}</Link> : name}</td>
            <td>{signInName}</td>
            <td>{role}</td>
            <td>{keepsShop ? 'yes' : 'no'}</td>
            <td>{active ? 'yes' : 'no, has left'}</td>
          </tr>
        ))}
      </tbody>
    </SettingsList>
  )
}
