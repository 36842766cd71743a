import type { Metadata } from 'next'
import Link from 'next/link'
import { SearchBar } from '@/app/_components/search-bar'
import { Shell } from '@/app/_components/shell/shell'
import { requireUser } from '@/lib/session'
import { listCustomers } from '@/lib/store/customer'

export const metadata: Metadata = { title: 'Customers' }

export default async function CustomersPage({ searchParams }: PageProps<'/customers'>) {
  const { actor, shop } = await requireUser()
  const { q } = await searchParams
  const search = typeof q === 'string' ? q : ''
  const customers = await listCustomers(search, 200)
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>Customers</h1>
        <Link className="button" href="/customers/new">
          New customer
        </Link>
      </div>
      <SearchBar action="/customers" value={search} label="Part of a name, phone or e-mail" />
      <div className="panel table-scroll">
        <table>
          <thead>
            <tr>
              <th>Name</th>
              <th>Phone</th>
              <th>E-mail</th>
              <th>Preferred contact</th>
            </tr>
          </thead>
          <tbody>
            {customers.map(({ id, name, phone, email, preferredContact }) => (
              <tr key={id}>
                <td>
                  <Link href={`/customers/${id}`}>{name}</Link>
                </td>
                <td>{phone}</td>
                <td>{email}</td>
                <td>{preferredContact}</td>
              </tr>
            ))}
          </tbody>
        </table>
        {customers.length === 0 && <p className="soft">Nobody found{search && ` for “${search}”`}.</p>}
      </div>
    </Shell>
  )
}
